/** The part of jsfeat 0.0.8 that is measured beside the watcher: its types are not published. */
declare module 'jsfeat' {
  interface Matrix {
    readonly data: Uint8Array;
  }
  interface Pyramid {
    readonly data: readonly [Matrix, ...Matrix[]];
    build(input: Matrix, skipFirst: boolean): void;
  }
  interface Corner {
    readonly x: number;
    readonly y: number;
    readonly score: number;
  }
  const jsfeat: {
    readonly U8C1_t: number;
    readonly matrix_t: new (columns: number, rows: number, type: number) => Matrix;
    readonly pyramid_t: new (levels: number) => Pyramid & {
      allocate(width: number, height: number, type: number): void;
    };
    readonly keypoint_t: new (x: number, y: number, score: number, level: number, angle: number) => Corner;
    readonly fast_corners: {
      set_threshold(threshold: number): void;
      /** Fills the corners that are handed in, and returns how many it found. */
      detect(source: Matrix, corners: Corner[], border: number): number;
    };
    readonly optical_flow_lk: {
      /** Points come and go as x, y, x, y …; `status` is 1 for each that was followed. */
      track(
        before: Pyramid,
        now: Pyramid,
        from: Float32Array,
        to: Float32Array,
        count: number,
        window: number,
        mostIterations: number,
        status: Uint8Array,
        epsilon: number,
        leastEigenvalue: number,
      ): void;
    };
  };
  export default jsfeat;
}
