declare module "@micropython/micropython-webassembly-pyscript/micropython.mjs" {
  interface MicroPython {
    FS: { mkdir(path: string): void; writeFile(path: string, text: string): void };
    globals: { get(name: string): (...values: string[]) => string };
    runPython(code: string): void;
  }
  export function loadMicroPython(options: { url: string; heapsize: number; pystack?: number; stdout?: (line: string) => void }): Promise<MicroPython>;
}
