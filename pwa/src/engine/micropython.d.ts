declare module "@micropython/micropython-webassembly-pyscript/micropython.mjs" {
  export function loadMicroPython(options: {
    url: string;
    heapsize: number;
  }): Promise<import("./loadEngine").MicroPython>;
}
