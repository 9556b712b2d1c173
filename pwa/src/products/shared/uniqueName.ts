/** What a batch of a product is called, told apart from every other one of the evening. */
export { nextName as uniqueName } from "../../state";
