"""Scripts that ask the store of a phone's browser what lies in it."""

# What the phone's own store answers to one request; every event of a batch, and how many wait for the server.
ASK = """async () => {
    const open = indexedDB.open("amberbench");
    const db = await new Promise((yes, no) => { open.onsuccess = () => yes(open.result); open.onerror = no; });
    const asked = db.transaction("%s").objectStore("%s").%s();
    const found = await new Promise((yes) => { asked.onsuccess = () => yes(asked.result); });
    db.close();
    return found%s;
}"""
READ_LOG = ASK % ("events", "events", "getAll", ".map((row) => row.event).filter((event) => event.batch_id !== null)")
COUNT_UNSENT = ASK % ("outbox", "outbox", "count", "")
