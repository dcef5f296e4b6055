/** What is open on the sheet of the enquiry, as it stands in the address. */
export interface EnquirySearch {
  /** Id of a complaint. */
  readonly at?: string;
}

/** Reads which complaint an address has open. */
export const readEnquirySearch = ({ at }: Record<string, unknown>): EnquirySearch =>
  typeof at === "string" ? { at } : {};
