"""Stories told by the phone's own modules under Node (`pwa/src/testing/*.proof.ts`)."""

import os
import subprocess
from pathlib import Path

PWA = Path(__file__).parents[1] / "pwa"
VITEST = PWA / "node_modules/vitest/vitest.mjs"


def proved(name: str, **settings: str) -> str:
    """Runs the stories of one file; what they said. `settings` reach it as AMBERBENCH_PROOF_<NAME>."""
    environment = {**os.environ, "NO_COLOR": "1"}
    environment |= {f"AMBERBENCH_PROOF_{key}": value for key, value in settings.items()}
    command = ["node", str(VITEST), "run", "--config", "vitest.proof.ts", name]
    done = subprocess.run(command, cwd=PWA, env=environment, capture_output=True, text=True, timeout=3000, check=False)
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    return done.stdout
