import type { Traits } from "../kindTraits";

export const chocolate: Traits<"chocolate"> = {
  route: "/plan/chocolate",
  word: "desk.bowl_of_chocolate",
  lendsChocolate: true,
};
