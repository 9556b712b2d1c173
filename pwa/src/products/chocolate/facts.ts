import type { Facts } from "../kind";

export const chocolate: Facts<"chocolate"> = {
  route: "/plan/chocolate",
  word: "desk.bowl_of_chocolate",
  lendsChocolate: true,
};
