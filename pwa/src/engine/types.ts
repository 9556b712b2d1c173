// Generated from the engine's fields and documents by `amberbench types`. Do not edit.
// SI units, temperatures in °C; the unit stands at the end of each name.
// A request as it is asked may leave out what has a default; its "Full" form is as the engine has checked it.

/** why one field of a request was not accepted */
export type ProblemDocument = {
  /** dotted path in the request */
  field: string;
  /** key of the sentence problem.<code> */
  code: string;
  /** what was given */
  given: unknown;
  /** least that is accepted */
  low: number | null;
  /** most that is accepted */
  high: number | null;
  /** unit of low and high */
  unit: string | null;
  /** what is accepted */
  accepted: unknown[] | null;
  /** the sentence */
  message: string;
};

/** what to mind; the code is the key of its sentence */
export type Warning = {
  /** key of the sentence */
  code: string;
  /** numbers in it */
  values: Values;
};

/** one input and its basis */
export type Input = {
  /** dotted path of the field */
  field: string;
  /** the value used */
  value: unknown;
  /** its unit */
  unit: string;
  /** where the value comes from */
  basis: "typed" | "measured" | "published" | "assumed";
  /** source key, or null */
  source: string | null;
  /** the test that measures it, or null */
  measure_by: string | null;
  /** closed batches it was measured from, or null; 0 to 1e+06 */
  n: number | null;
};

/** the melt of a batch */
export type MeltState = {
  /** what the bench reckons the next burst with */
  request: MeltRequest;
  /** what happened so far, in order */
  history: Happening[];
  /** bursts that were stirred after, in order */
  bursts: DoneBurst[];
  /** the burst that runs or waits for its stir */
  burning: RunningBurst | null;
  /** the water jacket; null: in an oven */
  jacket?: JacketState | null;
  /** the rest that runs */
  resting: Span | null;
  /** whether it stirs freely */
  free: boolean;
  /** whether a reading is wanted */
  read_wanted: boolean;
  /** the last reading; 0 to 150 °C */
  last_c: number | null;
  /** when something last happened; ms */
  last_at_ms: number | null;
  /** readings before a fill was taken from the bowl */
  past?: Happening[];
};

/** what a melt is planned with, in an oven or in a jacket, its defaults filled in */
export type MeltRequest = {
  /** caramel in the bowl; 0.05 to 10 kg */
  mass_kg: number;
  /** temperature before heating; -30 to 150 °C; 21.0 when left out */
  start_c: number;
  /** coolest bulk temperature to pour at; 30 to 120 °C; 71.0 when left out */
  window_low_c: number;
  /** hottest bulk temperature to pour at; 30 to 120 °C; 77.0 when left out */
  window_high_c: number;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material: Material;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c: number;
  /** bulk temperature from which it darkens; 40 to 140 °C; 82.0 when left out */
  warn_c: number;
  /** bulk temperature at which heating stops; 40 to 140 °C; 85.0 when left out */
  stop_c: number;
  /** longest burst; 5 to 300 s; 60.0 when left out */
  burst_s?: number;
  /** what the oven can set: 1, 5, 10, 15 or 30; 1 to 30 s; 5.0 when left out */
  step_s?: number;
  /** the microwave oven */
  oven?: FullOven;
  /** the bowl or jug; null: an ordinary one nobody weighed */
  vessel?: FullVessel | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
  /** standard deviation of start_c, once fills were taken from the bowl; K */
  start_sd_k?: number;
  /** the jacket's water; an oven has none; 40 to 140 °C */
  jacket_c?: number;
  /** in a jacket: shortest side of the block; null: a cube; m */
  thickness_m?: number | null;
  /** in a jacket: what it was chopped into; null: whole; m */
  chopped_m?: number | null;
};

/** what melt.next_burst says */
export type NextBurst = {
  /** what to do */
  action: "burst" | "ready" | "read_again" | "rest" | "stop";
  /** length of the burst or rest, 0 otherwise; 0 to 3600 s */
  seconds_s: number;
  /** power level on the dial in %; 100 is full power; 1 to 100 */
  level_percent: number;
  /** what follows the burst */
  then: "turn" | "stir";
  /** whether a reading is wanted after this burst */
  read: boolean;
  /** whether the hottest spot is to be read before the stir */
  spot: boolean;
  /** bulk temperature now; -1e+06 to 1e+06 °C */
  bulk_c: number;
  /** 10 % point; -1e+06 to 1e+06 °C */
  bulk_low_c: number;
  /** 90 % point; -1e+06 to 1e+06 °C */
  bulk_high_c: number;
  /** bulk temperature after the burst and a stir; -1e+06 to 1e+06 °C */
  expected_c: number;
  /** 10 % point of expected_c; -1e+06 to 1e+06 °C */
  expected_low_c: number;
  /** 90 % point of expected_c; -1e+06 to 1e+06 °C */
  expected_high_c: number;
  /** hottest spot in the burst, 95 % point; 98 % until a reading was trusted; -1e+06 to 1e+06 °C */
  hottest_c: number;
  /** power this mass absorbs, as believed now; 0 to 5000 W */
  power_w: number;
  /** its standard deviation; 0 to 5000 W */
  power_sd_w: number;
  /** why */
  reason: Sentence;
};

/** something that happened to a melt */
export type Happening = {
  /** what happened */
  kind: "burst" | "spot" | "stir" | "reading" | "rest";
  /** length of the burst or rest; s */
  seconds_s?: number;
  /** power level on the dial in %; 100 is full power; 1 to 100 */
  level_percent?: number;
  /** whether it stirs freely */
  free?: boolean;
  /** infrared reading; 0 to 150 °C */
  surface_c?: number;
};

/** a burst and what came of it */
export type DoneBurst = {
  /** what the engine advised; 0 to 3600 s */
  advised_s: number | null;
  /** bulk temperature believed before it; -30 to 250 °C */
  from_c: number | null;
  /** bulk temperature expected after it; -30 to 250 °C */
  expected_c: number | null;
  /** 10 % point of expected_c; -50 to 250 °C */
  low_c: number | null;
  /** 90 % point of expected_c; -30 to 300 °C */
  high_c: number | null;
  /** when it was started; ms */
  at_ms: number;
  /** how long it ran; s */
  seconds_s: number;
  /** power level on the dial in %; 100 is full power; 1 to 100 */
  level_percent?: number;
  /** whether it stirred freely after it */
  free: boolean;
  /** infrared reading after it; 0 to 150 °C */
  reading_c: number | null;
};

/** a burst that runs or waits for its stir */
export type RunningBurst = {
  /** what the engine advised; 0 to 3600 s */
  advised_s: number | null;
  /** what follows the burst; "stir" when left out */
  then: "turn" | "stir";
  /** whether a reading is wanted after it; false when left out */
  read: boolean;
  /** power level on the dial in %; 100 is full power; 1 to 100 */
  level_percent?: number;
  /** whether the hottest spot is to be read before the stir */
  spot?: boolean;
  /** bulk temperature believed before it; -30 to 250 °C */
  from_c: number | null;
  /** bulk temperature expected after it; -30 to 250 °C */
  expected_c: number | null;
  /** 10 % point of expected_c; -50 to 250 °C */
  low_c: number | null;
  /** 90 % point of expected_c; -30 to 300 °C */
  high_c: number | null;
  /** the hottest spot read before the stir; 0 to 150 °C */
  spot_c?: number | null;
  /** time set on the oven; 1 to 600 s */
  seconds_s: number;
  /** when it was started; ms */
  started_ms: number;
  /** when it ends; ms */
  due_ms: number;
};

/** a stretch of time */
export type Span = {
  /** from; ms */
  started_ms: number;
  /** to; ms */
  due_ms: number;
};

/** the melt in a water jacket */
export type JacketState = {
  /** expected until it is in the window; s */
  seconds_s: number;
  /** 10 % point; s */
  low_s: number;
  /** 90 % point; s */
  high_s: number;
  /** when the block went in; ms */
  started_ms: number | null;
  /** since when the clock of the next look runs; ms */
  set_ms: number | null;
  /** when it is looked at next; ms */
  due_ms: number | null;
  /** how much longer than planned it takes, by the looks so far */
  slower: number;
  /** looks, in order */
  looks: JacketLook[];
  /** when hot water was last added; ms */
  topped_ms: number | null;
  /** when it was last read; ms */
  read_ms: number | null;
};

/** a look at a block in its jacket */
export type JacketLook = {
  /** time since the block went in; s */
  at_s: number;
  /** whether it stirred freely */
  free: boolean;
};

/** the cooling of a batch */
export type CoolState = {
  /** time after pouring until it can be cut; 0 to 1e+08 s */
  ready_s: number;
  /** 10 % point; 0 to 1e+08 s */
  ready_low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  ready_high_s: number;
  /** heat loss over that of the model */
  loss_factor: number;
  /** what the bench refits the cooling with */
  request: CoolRequest;
  /** readings, in order */
  readings: SlabReading[];
  /** touch tests, in order */
  touches: Touch[];
  /** readings and touch tests the last refit had seen; -1 before the first; -1 to 200 */
  fitted: number;
  /** when it is touched next, or goes into the refrigerator; ms */
  due_ms: number | null;
  /** the chill that it needs; left out where the room makes it ready */
  chill?: Chill;
  /** when it went into the refrigerator; ms */
  chilled_ms?: number;
};

/** a request to cool.plan, its defaults filled in */
export type CoolRequest = {
  /** slab height; 0.001 to 0.1 m */
  thickness_m: number;
  /** temperature when poured; 20 to 150 °C; 74.0 when left out */
  start_c: number;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c: number;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material: Material;
  /** how the top gives off heat; "still_air" when left out */
  top: "still_air" | "fan" | FullTopByH;
  /** what the slab lies on; null: bottom face given by `bottom` alone; "marble" when left out */
  base: Base | null;
  /** resistance of parchment between slab and base; 0 to 0.1 m² K/W; 0.005 when left out */
  contact_m2k_w: number;
  /** how the underside gives off heat; "still_air" when left out */
  bottom: "still_air" | "fan" | "insulated" | FullBottomByH;
  /** hottest point when ready for the knife; 5 to 60 °C; 27.0 when left out */
  target_c: number;
  /** air of the refrigerator in which it is chilled where the room does not bring target_c; 0 to 15 °C; 5.0 when left out */
  fridge_c: number;
  /** slab length; 0.02 to 5 m; 0.35 when left out */
  length_m: number;
  /** slab width; 0.02 to 5 m; 0.35 when left out */
  width_m: number;
  /** length of the base; null: no larger than the slab; 0.02 to 10 m */
  base_length_m: number | null;
  /** width of the base; null: no larger than the slab; 0.02 to 10 m */
  base_width_m: number | null;
  /** thickness of a built-in base; null: the usual one; 0.0005 to 0.2 m */
  base_thickness_m: number | null;
  /** temperature of the base at pouring; null: room; -20 to 60 °C */
  base_start_c: number | null;
  /** heat loss over that of the model; 0.2 to 5; 1.0 when left out */
  loss_factor: number;
  /** standard deviation of the logarithm of loss_factor; 0.01 to 1; 0.2 when left out */
  loss_factor_sd: number;
  /** spread of start, room and contact from batch to batch, over what is assumed of them; 0.05 to 5; 1.0 when left out */
  spread: number;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches: BatchesByField | null;
};

/** a request to cool.refit */
export type RefitRequest = {
  /** slab height; 0.001 to 0.1 m */
  thickness_m: number;
  /** temperature when poured; 20 to 150 °C; 74.0 when left out */
  start_c?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** how the top gives off heat; "still_air" when left out */
  top?: "still_air" | "fan" | TopByH | null;
  /** what the slab lies on; null: bottom face given by `bottom` alone; "marble" when left out */
  base?: "steel_sheet" | "aluminium_tray" | "marble" | "granite" | "wood_board" | BaseByLayers | null;
  /** resistance of parchment between slab and base; 0 to 0.1 m² K/W; 0.005 when left out */
  contact_m2k_w?: number | null;
  /** how the underside gives off heat; "still_air" when left out */
  bottom?: "still_air" | "fan" | "insulated" | BottomByH | null;
  /** hottest point when ready for the knife; 5 to 60 °C; 27.0 when left out */
  target_c?: number | null;
  /** air of the refrigerator in which it is chilled where the room does not bring target_c; 0 to 15 °C; 5.0 when left out */
  fridge_c?: number | null;
  /** slab length; 0.02 to 5 m; 0.35 when left out */
  length_m?: number | null;
  /** slab width; 0.02 to 5 m; 0.35 when left out */
  width_m?: number | null;
  /** length of the base; null: no larger than the slab; 0.02 to 10 m */
  base_length_m?: number | null;
  /** width of the base; null: no larger than the slab; 0.02 to 10 m */
  base_width_m?: number | null;
  /** thickness of a built-in base; null: the usual one; 0.0005 to 0.2 m */
  base_thickness_m?: number | null;
  /** temperature of the base at pouring; null: room; -20 to 60 °C */
  base_start_c?: number | null;
  /** heat loss over that of the model; 0.2 to 5; 1.0 when left out */
  loss_factor?: number | null;
  /** standard deviation of the logarithm of loss_factor; 0.01 to 1; 0.2 when left out */
  loss_factor_sd?: number | null;
  /** spread of start, room and contact from batch to batch, over what is assumed of them; 0.05 to 5; 1.0 when left out */
  spread?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
  /** infrared readings so far; [] when left out */
  readings?: Reading[] | null;
  /** touch tests so far; [] when left out */
  touches?: RefitRequestTouch[] | null;
  /** how cold readings run; -5 to 5 K; 1.0 when left out */
  reading_low_k?: number | null;
  /** standard deviation of a reading; 0.05 to 10 K; 2.0 when left out */
  reading_sd_k?: number | null;
};

/** a reading of a slab */
export type SlabReading = {
  /** time after pouring; s */
  at_s: number;
  /** infrared reading; -10 to 150 °C */
  surface_c: number;
};

/** a touch test */
export type Touch = {
  /** time after pouring; s */
  at_s: number;
  /** whether the middle felt firm enough to cut */
  firm: boolean;
};

/** what the log keeps of a reply of cool.refit */
export type Refitted = {
  /** time after pouring until it can be cut; 0 to 1e+08 s */
  ready_s: number;
  /** 10 % point; 0 to 1e+08 s */
  ready_low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  ready_high_s: number;
  /** hottest point at ready; 5 to 60 °C */
  target_c?: number;
  /** the chill that makes it ready; null: the room does */
  chill?: Chill | null;
  /** in order of time; those never reached are left out */
  milestones?: Milestone[];
  /** core and surface over time */
  curve?: Curve[];
  /** what to mind */
  warnings?: Warning[];
  /** every input that went into the answer */
  inputs?: Input[];
  /** heat loss over that of the model, as fitted; 0.1 to 10 */
  loss_factor: number;
  /** standard deviation of its logarithm; 0 to 2 */
  loss_factor_sd?: number;
};

/** what is in the funnel */
export type FillState = {
  /** when it was last told of; ms */
  at_ms: number;
  /** when the funnel was filled; ms */
  filled_ms: number;
  /** when it was filled or read; ms */
  seen_ms: number;
  /** what is in the funnel; kg */
  kg: number;
  /** how warm it is, as believed; °C */
  now_c: number;
  /** the same, on the safe side; °C */
  sure_c: number;
  /** standard deviation of now_c; K */
  sd_k: number;
  /** how warm it was when filled; °C */
  filled_c?: number;
  /** what it has lost since; K */
  lost_k?: number;
  /** when it leaves its window, on the safe side; ms */
  thick_ms: number;
  /** the same, with less on the safe side; ms */
  likely_ms: number;
  /** when it has to be seen to; ms */
  due_ms: number;
  /** why then */
  why: "thick" | "low" | "anew";
};

/** a request to deposit.fill without what is read and weighed at the bench */
export type FillRequest = {
  /** heat the fill loses through wall and open top; 1 to 60 W/(m² K); 10.0 when left out */
  h_w_m2k: number;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material: Material;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c: number;
  /** coolest temperature to deposit at; 30 to 120 °C; 71.0 when left out */
  window_low_c: number;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c: number;
  /** what runs out of the funnel, pauses included; 1e-06 to 3 kg/s */
  pace_kg_s: number;
};

/** a tray that was laid */
export type LaidTray = {
  /** when it was begun; ms */
  began_ms: number;
  /** when it was laid; ms */
  laid_ms: number;
  /** when it had its second deposit; ms */
  second_ms: number | null;
  /** when it came off its paper; ms */
  freed_ms: number | null;
};

/** clusters of one size */
export type ClusterSize = {
  /** clusters of this size; 0 to 1e+09 */
  clusters: number;
  /** one first deposit; kg */
  deposit_kg: number;
  /** across it once it lies; m */
  spread_m?: number;
};

/** the melt of all that was weighed in, before fills were taken from the bowl */
export type Melted = {
  /** what the bench reckoned with */
  request: MeltRequest;
  /** what happened, in order */
  history: Happening[];
};

/** a reading of the funnel */
export type FunnelReading = {
  /** when; ms */
  at_ms: number;
  /** infrared reading into the funnel; 0 to 150 °C */
  surface_c: number;
};

/** a strip test */
export type Strip = {
  /** when it was judged; ms */
  at_ms: number;
  /** whether it set with a shine and no streaks */
  good: boolean;
};

/** the dipping of a batch */
export type DipState = {
  /** how the pieces are coated; "fork" when left out */
  method: "fork" | "enrober" | "enrober_with_bottomer";
  /** time from one piece to the next; 0.5 to 600 s; 20.0 when left out */
  dip_s: number | null;
  /** the salt that goes on top */
  salt: string | null;
  /** salt on one piece; null: not weighed; 1e-05 to 0.002 kg */
  salt_each_kg: number | null;
  /** whether each piece gets a mark on top; false when left out */
  top_mark: boolean | null;
  /** pieces to dip before the first of them is marked or salted; 0 to 1e+09 */
  every: number;
  /** when it was started; ms */
  started_ms: number | null;
  /** bowls of chocolate in use then; an older run has none */
  bowls?: Bowl[];
  /** how many times it was marked or salted; 0 to 1e+09 */
  salted: number;
  /** when last; ms */
  salted_ms: number | null;
  /** strip tests, in order */
  strips: Strip[];
  /** whether the last strip did not set well */
  streaky: boolean;
};

/** the wash before a batch */
export type WashState = {
  /** what must be washed off; null: nothing */
  wanted: WashWanted | null;
  /** when it was last washed; ms */
  washed_ms: number | null;
  /** when a wash was last done, or passed over; ms */
  answered_ms: number | null;
};

/** a wash that was passed over */
export type WashSkipped = {
  /** what should have been washed off */
  allergens: string[];
  /** a code; null: an older app asked for none */
  reason: string | null;
  /** the same in words; empty: none */
  text: string;
};

/** what the bench was used for before */
export type WashWanted = {
  /** what the bench was used for before; [] when left out */
  after: string[];
  /** what is on the bench and not declared by this batch; [] when left out */
  allergens: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** when hands were last at those; null: never; 0 to 1e+14 ms */
  until_ms: number | null;
};

/** what a batch contains by its labels */
export type PlanLabels = {
  /** allergens on the labels of its caramel and chocolate */
  contains: string[];
  /** whether somebody copied all of these labels */
  labels_known: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated: boolean;
};

/** the phone that has a batch: its clocks ring there */
export type Held = {
  /** its id */
  device_id: string;
  /** since when; ms */
  since_ms: number;
};

/** the place of a batch among those that make up what was asked for at once */
export type Series = {
  /** id of the first batch; null: this one */
  first: string | null;
  /** which it is, from 1; 0 to 1e+09 */
  number: number;
  /** how many there are; 0 to 1e+09 */
  of: number;
  /** those that follow */
  next: Values[];
};

/** old caramel in a batch */
export type RemeltState = {
  /** old caramel to weigh in; kg */
  old_kg: number;
  /** times that what is left over will have been melted again; 0 to 1e+09 */
  n: number;
  /** times that its label allows; null: not known; 0 to 1e+09 */
  allowed_n: number | null;
  /** old caramel weighed in; null: not yet; kg */
  weighed_kg: number | null;
};

/** a weighing */
export type WeighedOut = {
  /** what the scale said; 0 to 50 kg */
  kg: number;
  /** what was weighed */
  what: string;
};

/** what a batch took of a lot */
export type LotUse = {
  /** the lot */
  lot_id: string;
  /** how much, in its unit */
  amount: number;
  /** when; ms */
  at_ms: number;
};

/** an event that was passed over */
export type Ignored = {
  /** its id; null: it has none */
  id: string | null;
  /** a code */
  why: string;
};

/** why a batch was thrown away */
export type ThrownAway = {
  /** a code */
  reason: string;
  /** the same in words; empty: none */
  text: string;
};

/** what undo would take back */
export type Undoable = {
  /** its id */
  event_id: string;
  /** its kind */
  kind: string;
};

/** the plan of a slab of caramels */
export type SlabPlan = {
  /** the kind */
  kind: "slab";
  /** what people call it */
  name: string;
  /** what is sold */
  product_id?: string | null;
  /** the oven */
  oven_id?: string | null;
  /** the base */
  base_id?: string | null;
  /** the caramel */
  caramel_id?: string | null;
  /** the chocolate of a bowl */
  chocolate_id?: string | null;
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** allergens on the labels of its caramel and chocolate */
  contains?: string[];
  /** whether somebody copied all of these labels */
  labels_known?: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated?: boolean;
  /** its place among batches planned together */
  series?: Series;
  /** whether it gets a thin coat below before it is cut */
  prebottom?: boolean;
  /** what becomes of the cut pieces */
  finish?: "plain" | "dipped" | "wrapped";
  /** the request to slab.plan */
  request: SlabPlanRequest;
  /** the reply of slab.plan */
  reply: SlabPlanReply;
};

/** what a run takes of the plan of a slab of caramels */
export type SlabPlanTaken = {
  /** the kind */
  kind: "slab";
  /** what people call it */
  name: string;
  /** what is sold */
  product_id?: string | null;
  /** the oven */
  oven_id?: string | null;
  /** the base */
  base_id?: string | null;
  /** the caramel */
  caramel_id?: string | null;
  /** the chocolate of a bowl */
  chocolate_id?: string | null;
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** allergens on the labels of its caramel and chocolate */
  contains?: string[];
  /** whether somebody copied all of these labels */
  labels_known?: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated?: boolean;
  /** its place among batches planned together */
  series?: Series;
  /** whether it gets a thin coat below before it is cut */
  prebottom?: boolean;
  /** what becomes of the cut pieces */
  finish?: "plain" | "dipped" | "wrapped";
  /** of the reply of slab.plan */
  reply: SlabPlanTakenReply;
};

/** the state of a slab of caramels */
export type SlabRun = {
  /** the kind */
  kind: "slab";
  /** what people call it */
  name: string;
  /** whether it gets a thin coat below before it is cut */
  prebottom: boolean;
  /** lot of the caramel or chocolate */
  lot: string | null;
  /** when it was opened; ms */
  opened_at_ms: number | null;
  /** when it was closed; ms */
  closed_at_ms: number | null;
  /** when something last happened; ms */
  last_at_ms: number | null;
  /** the phone that has the batch */
  held: Held | null;
  /** when each step was done, by its name */
  done: Record<string, number>;
  /** steps that were passed over */
  skipped: string[];
  /** caramel or chocolate weighed in; kg */
  weighed_kg: number | null;
  /** old caramel in it */
  remelt?: RemeltState;
  /** the dipping; null: nothing is dipped */
  dip?: DipState | null;
  /** warnings of the plan that the bench says again */
  room?: Warning[];
  /** the wash before it goes on */
  wash?: WashState;
  /** when hands were last at it; ms */
  touched_ms?: number | null;
  /** whether its pieces are wrapped */
  wrap?: boolean;
  /** good pieces counted; null before the count; 0 to 1e+09 */
  pieces: number | null;
  /** what was weighed at the end */
  out: WeighedOut[];
  /** pictures taken; 0 to 1e+09 */
  photos?: number;
  /** what was taken of lots in stock */
  uses?: LotUse[];
  /** whether all labels of what it is made of were copied */
  labels_known?: boolean;
  /** what it contains by them, and what lies under */
  contains?: string[];
  /** what was not washed off before it */
  may_contain?: string[];
  /** washes that were passed over */
  unwashed?: WashSkipped[];
  /** tasks of the day that somebody pinned, by their names */
  pins?: Record<string, number>;
  /** why nothing of it is sold; null: it is not */
  thrown_away?: ThrownAway | null;
  /** why the shop leaves it out of what it learns; null: it does not */
  left_out: string | null;
  /** events that did not fit */
  ignored: Ignored[];
  /** the event that undo would take back */
  undoable: Undoable | null;
  /** the event taken back last, which redo would put back */
  redoable?: Undoable | null;
  /** whether an event came that cannot be folded in place */
  needs_replay: boolean;
  /** what was planned */
  planned: SlabRunPlanned;
  /** the melt */
  melt: MeltState;
  /** the cooling */
  cool: CoolState;
  /** this kind has none */
  cluster?: null;
  /** this kind has none */
  bowl?: null;
  /** this kind has none */
  stand?: null;
};

/** the plan of clusters */
export type ClusterPlan = {
  /** the kind */
  kind: "cluster";
  /** what people call it */
  name: string;
  /** what is sold */
  product_id?: string | null;
  /** the oven */
  oven_id?: string | null;
  /** the base */
  base_id?: string | null;
  /** the caramel */
  caramel_id?: string | null;
  /** the chocolate of a bowl */
  chocolate_id?: string | null;
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** allergens on the labels of its caramel and chocolate */
  contains?: string[];
  /** whether somebody copied all of these labels */
  labels_known?: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated?: boolean;
  /** its place among batches planned together */
  series?: Series;
  /** what becomes of the clusters */
  finish?: "plain" | "dipped";
  /** the request to cluster.plan */
  request: ClusterPlanRequest;
  /** the reply of cluster.plan */
  reply: ClusterPlanReply;
};

/** what a run takes of the plan of clusters */
export type ClusterPlanTaken = {
  /** the kind */
  kind: "cluster";
  /** what people call it */
  name: string;
  /** what is sold */
  product_id?: string | null;
  /** the oven */
  oven_id?: string | null;
  /** the base */
  base_id?: string | null;
  /** the caramel */
  caramel_id?: string | null;
  /** the chocolate of a bowl */
  chocolate_id?: string | null;
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** allergens on the labels of its caramel and chocolate */
  contains?: string[];
  /** whether somebody copied all of these labels */
  labels_known?: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated?: boolean;
  /** its place among batches planned together */
  series?: Series;
  /** what becomes of the clusters */
  finish?: "plain" | "dipped";
  /** of the reply of cluster.plan */
  reply: ClusterPlanTakenReply;
};

/** the state of a batch of clusters */
export type ClusterRun = {
  /** the kind */
  kind: "cluster";
  /** what people call it */
  name: string;
  /** whether it gets a thin coat below before it is cut */
  prebottom: boolean;
  /** lot of the caramel or chocolate */
  lot: string | null;
  /** when it was opened; ms */
  opened_at_ms: number | null;
  /** when it was closed; ms */
  closed_at_ms: number | null;
  /** when something last happened; ms */
  last_at_ms: number | null;
  /** the phone that has the batch */
  held: Held | null;
  /** when each step was done, by its name */
  done: Record<string, number>;
  /** steps that were passed over */
  skipped: string[];
  /** caramel or chocolate weighed in; kg */
  weighed_kg: number | null;
  /** old caramel in it */
  remelt?: RemeltState;
  /** the dipping; null: nothing is dipped */
  dip?: DipState | null;
  /** warnings of the plan that the bench says again */
  room?: Warning[];
  /** the wash before it goes on */
  wash?: WashState;
  /** when hands were last at it; ms */
  touched_ms?: number | null;
  /** whether its pieces are wrapped */
  wrap?: boolean;
  /** good pieces counted; null before the count; 0 to 1e+09 */
  pieces: number | null;
  /** what was weighed at the end */
  out: WeighedOut[];
  /** pictures taken; 0 to 1e+09 */
  photos?: number;
  /** what was taken of lots in stock */
  uses?: LotUse[];
  /** whether all labels of what it is made of were copied */
  labels_known?: boolean;
  /** what it contains by them, and what lies under */
  contains?: string[];
  /** what was not washed off before it */
  may_contain?: string[];
  /** washes that were passed over */
  unwashed?: WashSkipped[];
  /** tasks of the day that somebody pinned, by their names */
  pins?: Record<string, number>;
  /** why nothing of it is sold; null: it is not */
  thrown_away?: ThrownAway | null;
  /** why the shop leaves it out of what it learns; null: it does not */
  left_out: string | null;
  /** events that did not fit */
  ignored: Ignored[];
  /** the event that undo would take back */
  undoable: Undoable | null;
  /** the event taken back last, which redo would put back */
  redoable?: Undoable | null;
  /** whether an event came that cannot be folded in place */
  needs_replay: boolean;
  /** what was planned */
  planned: ClusterRunPlanned;
  /** the melt */
  melt: MeltState;
  /** the trays and the funnel */
  cluster: ClusterState;
  /** this kind has none */
  cool?: null;
  /** this kind has none */
  bowl?: null;
  /** this kind has none */
  stand?: null;
};

/** the trays and the funnel of a batch */
export type ClusterState = {
  /** one fill of the funnel; kg */
  full_kg: number;
  /** what the funnel takes where that is all there is; kg */
  most_fill_kg?: number;
  /** how long a fresh fill stays warm enough, on the safe side; s */
  fresh_s: number;
  /** what is in the funnel; null: nothing */
  fill: FillState | null;
  /** fills so far; 0 to 1e+09 */
  fills: number;
  /** when it was filled first; ms */
  filled_ms: number | null;
  /** what is in the bowl; kg */
  bowl_kg: number | null;
  /** what bowl and funnel held when this turn began; kg */
  base_kg: number | null;
  /** when this turn began; ms */
  begun_ms: number | null;
  /** what was begun and is not done */
  under_way: "lay" | "second" | null;
  /** the melt before the first fill */
  melted: Melted | null;
  /** readings of the funnel, in order */
  readings: FunnelReading[];
  /** what the bench reckons a fill with */
  request: FillRequest;
  /** time to lay a full tray; 0 to 1e+08 s */
  tray_s: number;
  /** trays; 1 to 20000 */
  trays: number;
  /** deposits on a full tray; 1 to 10000 */
  per_tray: number;
  /** clusters of each size, in laying order */
  sizes: ClusterSize[];
  /** one second deposit; kg */
  second_kg: number;
  /** share of the caramel that is laid */
  given: number;
  /** when a second deposit may go on, after the first was laid; null: none is planned */
  second: Second | null;
  /** when the tray can be freed, after its last deposit was laid */
  free: Free;
  /** the chill of a tray that is not free by free.from_s; null: the room frees it */
  chill?: ClusterPlanReplyChill | null;
  /** trays, in laying order */
  laid: LaidTray[];
  /** whether no further tray is laid */
  all_laid: boolean;
  /** touches before a second deposit, in order */
  tests: TackTest[];
  /** how much later than planned the caramel turns tacky */
  tack: number;
  /** tries to free a tray, in order */
  tries: FreeTest[];
  /** when the next tray is tried again; ms */
  free_again_ms: number | null;
  /** lots of what lies under, in the order of the plan */
  under_lots?: UnderLot[];
};

/** what lies under a cluster */
export type LiesUnder = {
  /** its name; null: only its make-up is known */
  material: string | null;
  /** how many lie under each; null: a bed; 0 to 1e+09 */
  each_n: number | null;
  /** its allergen; null: none known */
  allergen: string | null;
};

/** the lot of what lies under */
export type UnderLot = {
  /** what lies under; null: it has no name */
  material: string | null;
  /** its lot; null: none is known */
  lot: string | null;
};

/** a touch before a second deposit */
export type TackTest = {
  /** time after laying was begun; s */
  at_s: number;
  /** whether it was tacky */
  tacky: boolean;
};

/** a try to free a tray */
export type FreeTest = {
  /** when; ms */
  at_ms: number;
  /** whether its clusters came off the paper */
  free: boolean;
};

/** the plan of a bowl of chocolate */
export type ChocolatePlan = {
  /** the kind */
  kind: "chocolate";
  /** what people call it */
  name: string;
  /** what is sold */
  product_id?: string | null;
  /** the oven */
  oven_id?: string | null;
  /** the base */
  base_id?: string | null;
  /** the caramel */
  caramel_id?: string | null;
  /** the chocolate of a bowl */
  chocolate_id?: string | null;
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** allergens on the labels of its caramel and chocolate */
  contains?: string[];
  /** whether somebody copied all of these labels */
  labels_known?: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated?: boolean;
  /** its place among batches planned together */
  series?: Series;
  /** the request to chocolate.plan */
  request: ChocolateTemperRequest;
  /** the reply of chocolate.plan */
  reply: ChocolatePlanReply;
};

/** what a run takes of the plan of a bowl of chocolate */
export type ChocolatePlanTaken = {
  /** the kind */
  kind: "chocolate";
  /** what people call it */
  name: string;
  /** what is sold */
  product_id?: string | null;
  /** the oven */
  oven_id?: string | null;
  /** the base */
  base_id?: string | null;
  /** the caramel */
  caramel_id?: string | null;
  /** the chocolate of a bowl */
  chocolate_id?: string | null;
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** allergens on the labels of its caramel and chocolate */
  contains?: string[];
  /** whether somebody copied all of these labels */
  labels_known?: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated?: boolean;
  /** its place among batches planned together */
  series?: Series;
  /** of the reply of chocolate.plan */
  reply: ChocolatePlanTakenReply;
};

/** the state of a bowl of chocolate as a batch */
export type ChocolateRun = {
  /** the kind */
  kind: "chocolate";
  /** what people call it */
  name: string;
  /** whether it gets a thin coat below before it is cut */
  prebottom: boolean;
  /** lot of the caramel or chocolate */
  lot: string | null;
  /** when it was opened; ms */
  opened_at_ms: number | null;
  /** when it was closed; ms */
  closed_at_ms: number | null;
  /** when something last happened; ms */
  last_at_ms: number | null;
  /** the phone that has the batch */
  held: Held | null;
  /** when each step was done, by its name */
  done: Record<string, number>;
  /** steps that were passed over */
  skipped: string[];
  /** caramel or chocolate weighed in; kg */
  weighed_kg: number | null;
  /** old caramel in it */
  remelt?: RemeltState;
  /** the dipping; null: nothing is dipped */
  dip?: DipState | null;
  /** warnings of the plan that the bench says again */
  room?: Warning[];
  /** the wash before it goes on */
  wash?: WashState;
  /** when hands were last at it; ms */
  touched_ms?: number | null;
  /** whether its pieces are wrapped */
  wrap?: boolean;
  /** good pieces counted; null before the count; 0 to 1e+09 */
  pieces: number | null;
  /** what was weighed at the end */
  out: WeighedOut[];
  /** pictures taken; 0 to 1e+09 */
  photos?: number;
  /** what was taken of lots in stock */
  uses?: LotUse[];
  /** whether all labels of what it is made of were copied */
  labels_known?: boolean;
  /** what it contains by them, and what lies under */
  contains?: string[];
  /** what was not washed off before it */
  may_contain?: string[];
  /** washes that were passed over */
  unwashed?: WashSkipped[];
  /** tasks of the day that somebody pinned, by their names */
  pins?: Record<string, number>;
  /** why nothing of it is sold; null: it is not */
  thrown_away?: ThrownAway | null;
  /** why the shop leaves it out of what it learns; null: it does not */
  left_out: string | null;
  /** events that did not fit */
  ignored: Ignored[];
  /** the event that undo would take back */
  undoable: Undoable | null;
  /** the event taken back last, which redo would put back */
  redoable?: Undoable | null;
  /** whether an event came that cannot be folded in place */
  needs_replay: boolean;
  /** what was planned */
  planned: ChocolateRunPlanned;
  /** the bowl */
  bowl: BowlState;
  /** this kind has none */
  melt?: null;
  /** this kind has none */
  cool?: null;
  /** this kind has none */
  cluster?: null;
  /** this kind has none */
  stand?: null;
};

/** a bowl of chocolate */
export type BowlState = {
  /** what the bench reckons with */
  request: BowlRequest;
  /** its heat lines */
  line: FullTargets;
  /** bursts, in order */
  bursts: BowlBurst[];
  /** the last burst */
  burning: Span | null;
  /** readings, in order */
  readings: BowlReading[];
  /** the last reading; null: it no longer holds; °C */
  read_c: number | null;
  /** when it was read; ms */
  read_ms: number | null;
  /** seed stirred in, in order */
  seeds: Seeded[];
  /** when seed was last stirred in; ms */
  seeded_ms: number | null;
  /** strip tests, in order */
  strips: Strip[];
  /** times it was warmed, in order */
  warmed: At[];
  /** whether somebody said that it is too thick */
  thick: boolean;
  /** whether the last strip did not set well */
  streaky: boolean;
  /** logarithm of how much faster it cools than the model says */
  faster: number;
  /** its standard deviation; null before the first reading */
  faster_sd: number | null;
  /** time it stays in its working range, from the last reading */
  hold: Hold | null;
  /** lot the leftover is kept under */
  leftover_lot: string | null;
};

/** a request to chocolate.plan, its defaults filled in */
export type BowlRequest = {
  /** the kind of chocolate; "dark_chocolate" when left out */
  chocolate: "dark_chocolate" | "milk_chocolate" | "white_chocolate";
  /** heat lines of the shop's own chocolate, from its label; null: those of its kind */
  targets: FullTargets | null;
  /** chocolate wanted in temper, seed included; 0.05 to 100 kg */
  mass_kg: number;
  /** temperature of the melt; null: the coolest of its kind; 20 to 80 °C */
  melt_c: number | null;
  /** temperature of the seed; null: the room's; -20 to 60 °C */
  seed_c: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c: number;
  /** the bowl; null: none counted */
  bowl: FullVessel | null;
};

/** a burst */
export type BowlBurst = {
  /** when; ms */
  at_ms: number;
  /** time set on the oven; s */
  seconds_s: number;
};

/** a reading of a bowl */
export type BowlReading = {
  /** when; ms */
  at_ms: number;
  /** probe reading; °C */
  bowl_c: number;
};

/** seed stirred in */
export type Seeded = {
  /** when; ms */
  at_ms: number;
  /** how much; kg */
  kg: number;
};

/** that it was done */
export type At = {
  /** when; ms */
  at_ms: number;
};

/** the plan of a stand-up test of a caramel */
export type StandupPlan = {
  /** the kind */
  kind: "standup";
  /** what people call it */
  name: string;
  /** what is sold */
  product_id?: string | null;
  /** the oven */
  oven_id?: string | null;
  /** the base */
  base_id?: string | null;
  /** the caramel that is tried */
  caramel_id: string;
  /** the chocolate of a bowl */
  chocolate_id?: string | null;
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** allergens on the labels of its caramel and chocolate */
  contains?: string[];
  /** whether somebody copied all of these labels */
  labels_known?: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated?: boolean;
  /** its place among batches planned together */
  series?: Series;
  /** where it stands */
  request: StandupPlanRequest;
  /** the same: nothing of it is computed beforehand */
  reply: StandupPlanReply;
};

/** what a run takes of the plan of a stand-up test */
export type StandupPlanTaken = {
  /** the kind */
  kind: "standup";
  /** what people call it */
  name: string;
  /** what is sold */
  product_id?: string | null;
  /** the oven */
  oven_id?: string | null;
  /** the base */
  base_id?: string | null;
  /** the caramel that is tried */
  caramel_id: string;
  /** the chocolate of a bowl */
  chocolate_id?: string | null;
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** allergens on the labels of its caramel and chocolate */
  contains?: string[];
  /** whether somebody copied all of these labels */
  labels_known?: boolean;
  /** whether it takes chocolate from a bowl: dipped, or coated below */
  coated?: boolean;
  /** its place among batches planned together */
  series?: Series;
  /** nothing else of it is needed */
  reply: StandupPlanRequest;
};

/** the state of a stand-up test */
export type StandupRun = {
  /** the kind */
  kind: "standup";
  /** what people call it */
  name: string;
  /** whether it gets a thin coat below before it is cut */
  prebottom: boolean;
  /** lot of the caramel or chocolate */
  lot: string | null;
  /** when it was opened; ms */
  opened_at_ms: number | null;
  /** when it was closed; ms */
  closed_at_ms: number | null;
  /** when something last happened; ms */
  last_at_ms: number | null;
  /** the phone that has the batch */
  held: Held | null;
  /** when each step was done, by its name */
  done: Record<string, number>;
  /** steps that were passed over */
  skipped: string[];
  /** caramel or chocolate weighed in; kg */
  weighed_kg: number | null;
  /** old caramel in it */
  remelt?: RemeltState;
  /** the dipping; null: nothing is dipped */
  dip?: DipState | null;
  /** warnings of the plan that the bench says again */
  room?: Warning[];
  /** the wash before it goes on */
  wash?: WashState;
  /** when hands were last at it; ms */
  touched_ms?: number | null;
  /** whether its pieces are wrapped */
  wrap?: boolean;
  /** good pieces counted; null before the count; 0 to 1e+09 */
  pieces: number | null;
  /** what was weighed at the end */
  out: WeighedOut[];
  /** pictures taken; 0 to 1e+09 */
  photos?: number;
  /** what was taken of lots in stock */
  uses?: LotUse[];
  /** whether all labels of what it is made of were copied */
  labels_known?: boolean;
  /** what it contains by them, and what lies under */
  contains?: string[];
  /** what was not washed off before it */
  may_contain?: string[];
  /** washes that were passed over */
  unwashed?: WashSkipped[];
  /** tasks of the day that somebody pinned, by their names */
  pins?: Record<string, number>;
  /** why nothing of it is sold; null: it is not */
  thrown_away?: ThrownAway | null;
  /** why the shop leaves it out of what it learns; null: it does not */
  left_out: string | null;
  /** events that did not fit */
  ignored: Ignored[];
  /** the event that undo would take back */
  undoable: Undoable | null;
  /** the event taken back last, which redo would put back */
  redoable?: Undoable | null;
  /** whether an event came that cannot be folded in place */
  needs_replay: boolean;
  /** what was planned */
  planned: StandupRunPlanned;
  /** the test */
  stand: StandState;
  /** this kind has none */
  melt?: null;
  /** this kind has none */
  cool?: null;
  /** this kind has none */
  cluster?: null;
  /** this kind has none */
  bowl?: null;
};

/** a cube that stands */
export type StandState = {
  /** heights of the cube, the fresh one first */
  heights: StoodHeight[];
  /** share of its first height that is lost */
  lost_fraction: number | null;
  /** whether it stays square in this room */
  verdict: "firm" | "borderline" | "slumps" | null;
};

/** a height of the cube */
export type StoodHeight = {
  /** when; ms */
  at_ms: number;
  /** height of the cube then; m */
  height_m: number;
};

/** an event as far as a fold reads it */
export type LoggedEvent = {
  /** UUIDv7 made on the phone */
  id: string;
  /** the phone */
  device_id: string;
  /** the phone's own count; 0 to 9.0072e+15 */
  seq: number;
  /** by the phone's clock; ms */
  at_ms: number;
  /** server clock minus phone clock, estimated when it was written; ms */
  offset_ms: number;
  /** what happened */
  kind: string;
  /** what is told of it */
  body: Values;
};

/** something that was done or read, as the log keeps it; order: (at_ms + offset_ms, device_id, seq) */
export type BenchEvent = {
  /** UUIDv7 made on the phone */
  id: string;
  /** the phone */
  device_id: string;
  /** the phone's own count; 0 to 9.0072e+15 */
  seq: number;
  /** by the phone's clock; ms */
  at_ms: number;
  /** server clock minus phone clock, estimated when it was written; ms */
  offset_ms: number;
  /** what happened */
  kind: string;
  /** what is told of it */
  body: Values;
  /** form of the envelope; 0 to 9.0072e+15 */
  v: number;
  /** the shop */
  shop_id: string;
  /** what it belongs to: batch/<id>, shop/<id>, or what a newer app knows */
  stream?: string;
  /** the batch of a batch's stream, else null */
  batch_id: string | null;
};

/** a sentence */
export type Sentence = {
  /** key of the sentence */
  code: string;
  /** what stands in it */
  values: Values;
};

/** the one number that matters */
export type Figure = {
  /** its name; the end says the unit */
  name: string;
  /** the figure */
  value: number;
  /** 10 % point */
  low?: number | null;
  /** 90 % point */
  high?: number | null;
};

/** a running clock */
export type Clock = {
  /** its name */
  name: string;
  /** since when it runs; ms */
  started_ms: number;
  /** when it rings; ms */
  due_ms: number;
  /** how it sounds */
  sound: SoundName;
  /** what the tap that silences it writes; none: it only silences */
  tells?: EventButton;
};

/** a number to type; it writes event `kind` with `body` and the field */
export type Entry = {
  /** the event it writes */
  kind: string;
  /** the field of its body */
  field: string;
  /** its name; the end says the unit */
  name: string;
  /** least that is accepted */
  low: number;
  /** most that is accepted */
  high: number;
  /** what was typed last */
  last: number | null;
  /** 10 % point of what is expected */
  likely_low: number | null;
  /** 90 % point of it */
  likely_high: number | null;
  /** lower end of where it should be */
  band_low: number | null;
  /** upper end of it */
  band_high: number | null;
  /** the rest of its body */
  body: Values;
};

/** a text to type */
export type TextEntry = {
  /** the event it writes */
  kind: string;
  /** the field of its body */
  field: string;
  /** its name; the end says the unit */
  name: string;
  /** words have no range */
  low: null;
  /** words have no range */
  high: null;
  /** what was typed last */
  last: number | null;
  /** 10 % point of what is expected */
  likely_low: number | null;
  /** 90 % point of it */
  likely_high: number | null;
  /** lower end of where it should be */
  band_low: number | null;
  /** upper end of it */
  band_high: number | null;
  /** the rest of its body */
  body: Values;
};

/** a button that writes an event */
export type EventButton = {
  /** full key of its words */
  code: string;
  /** the event it writes */
  kind: string;
  /** its body */
  body: Values;
  /** it is asked why first: its body's `reason`, and `text` in words */
  reasons?: string[];
  /** it opens no keypad */
  entry?: null;
};

/** a button that opens the keypad */
export type EntryButton = {
  /** full key of its words */
  code: string;
  /** what is typed */
  entry: ToType;
  /** it writes no event by itself */
  kind?: null;
  /** it writes no event by itself */
  body?: null;
};

/** what to mind */
export type Caution = {
  /** the signal word */
  word: SignalWord;
  /** key of the sentence */
  code: string;
  /** what stands in it */
  values?: Values;
};

/** all that the bench screen draws; codes are full keys of the texts */
export type Advice = {
  /** the step that is open */
  step: string;
  /** the prompt */
  say: Sentence;
  /** the one number that matters */
  number: Figure | null;
  /** running clocks, soonest first */
  clocks: Clock[];
  /** the big button */
  action: Action | null;
  /** other buttons of this step */
  choices: Action[];
  /** a number or a text to type */
  entry: ToType | null;
  /** signal word and sentence */
  caution: Caution | null;
  /** a second, smaller line */
  more: Sentence | null;
  /** what is to be computed and written to the log */
  wants: Wants | null;
  /** what undo would take back */
  undo: Undo | null;
  /** what was taken back last and may be put back */
  redo: Undo | null;
  /** the button that throws it away */
  throw_away: EventButton | null;
  /** whether caramel or chocolate of it is hot: it cools while nobody is there */
  hot: boolean;
  /** while melting, for the ladder */
  melt: NextBurst | null;
};

/** call this function, write what `keep` names of its reply as an event of this kind */
export type Wants = {
  /** the function to call */
  name: "cool.refit";
  /** its request */
  request: RefitRequest;
  /** the event that its reply becomes */
  kind: "cooling_refitted";
  /** what the event's body holds besides the reply */
  body: WantsBody;
  /** what of the reply is kept */
  keep: ("ready_s" | "ready_low_s" | "ready_high_s" | "target_c" | "chill" | "milestones" | "curve" | "warnings" | "inputs" | "loss_factor" | "loss_factor_sd")[];
};

/** what undo would take back */
export type Undo = {
  /** the event */
  event_id: string;
  /** key of its words */
  code: string;
};

/** one of the shop's ovens */
export type OvenRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** power on the rating plate, or as a water test measured it; 200 to 3500 W */
  rated_w: number | null;
  /** whether it turns the bowl; true when left out */
  turntable: boolean;
  /** what the oven can set: 1, 5, 10, 15 or 30; 1 to 30 s; 5.0 when left out */
  step_s: number;
  /** hottest rise over mean rise in one burst; null: by turntable; 1 to 4 */
  unevenness: number | null;
  /** power levels its dial offers; none: full power alone; [] when left out */
  levels_percent: number[];
};

/** one of the shop's vessels */
export type VesselRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** mass of the empty vessel; 0.01 to 20 kg */
  mass_kg: number | null;
  /** what the bowl holds, filled to the brim; null: unknown; 0.0003 to 0.2 m³ */
  volume_m3: number | null;
  /** what it is made of; sets heat_capacity_j_kgk; "glass" when left out */
  made_of: "ceramic" | "glass" | "plastic" | "silicone" | "steel";
  /** specific heat of the vessel; 300 to 3000 J/(kg K); 800.0 when left out */
  heat_capacity_j_kgk: number;
  /** whether it stands in a water jacket instead of going into the oven; false when left out */
  jacketed: boolean;
  /** what its jacket's water is kept at; 40 to 140 °C; 88.0 when left out */
  water_c: number;
};

/** one of the shop's bases */
export type BaseRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** what the slab lies on; null: bottom face given by `bottom` alone; "marble" when left out */
  base: Base;
  /** how long it is; null: no longer than the slab; 0.02 to 10 m */
  length_m: number | null;
  /** how wide it is; null: no wider than the slab; 0.02 to 10 m */
  width_m: number | null;
  /** how thick it is; null: as usual for what it is made of; 0.0005 to 0.2 m */
  thickness_m: number | null;
  /** resistance of parchment between slab and base; 0 to 0.1 m² K/W; 0.005 when left out */
  contact_m2k_w: number;
  /** how the underside gives off heat; "still_air" when left out */
  bottom: "still_air" | "fan" | "insulated" | FullBottomByH;
};

/** one of the shop's bars */
export type BarRow = {
  /** its id */
  id: string;
  /** height of a bar; 0.002 to 0.1 m */
  height_m: number | null;
  /** how many there are; four close a frame; 1 to 200; 4 when left out */
  count: number;
  /** length of a bar; 0.05 to 5 m */
  length_m: number | null;
};

/** one of the shop's tables */
export type TableRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** longest frame it has room for; 0.05 to 5 m */
  max_length_m: number | null;
  /** widest frame; 0.05 to 5 m */
  max_width_m: number | null;
};

/** one of the shop's frames */
export type FrameRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** length inside; 0.02 to 5 m */
  length_m: number | null;
  /** width inside; 0.02 to 5 m */
  width_m: number | null;
};

/** one of the shop's trays */
export type TrayRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** length inside; 0.02 to 5 m */
  length_m: number | null;
  /** width inside; 0.02 to 5 m */
  width_m: number | null;
  /** kept clear along every edge; 0 to 0.2 m; 0.02 when left out */
  rim_m: number;
};

/** one of the shop's funnels */
export type FunnelRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** brimful; 0.0002 to 0.01 m³ */
  volume_m3: number | null;
  /** share that is filled; 0.25 to 1; 0.75 when left out */
  fill: number;
  /** pace of the hand, per minute; 1 to 300; 20.0 when left out */
  deposits_per_min: number;
};

/** one of the shop's caramels */
export type CaramelRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** what the engine reckons it with */
  material: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | CaramelRowMaterialByWater;
  /** weight of one block as bought; 0.05 to 50 kg */
  block_kg: number | null;
  /** weighed at room temperature; null: from its make-up; 800 to 1700 kg/m³ */
  density_kg_m3: number | null;
  /** windows */
  windows: CaramelRowWindows;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c: number;
  /** bulk temperature from which it darkens; 40 to 140 °C; 82.0 when left out */
  warn_c: number;
  /** bulk temperature at which heating stops; 40 to 140 °C; 85.0 when left out */
  stop_c: number;
  /** hottest point of a slab of it that this shop calls ready to cut; 5 to 60 °C; 27.0 when left out */
  target_c: number;
  /** allergens on its label; ["milk"] when left out */
  contains: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** times that the caramel's label allows it to be melted again; null: not known; 0 to 10 */
  remelts_allowed: number | null;
  /** how a piece felt at delivery; null: not squeezed */
  squeeze: "firm" | "soft" | "brittle" | null;
  /** what a stand-up test said of it; null: none was made */
  firmness: "firm" | "borderline" | "slumps" | null;
  /** it is as stiff as reckoned by its water in a room so much colder; null: no test said so; -30 to 40 K */
  stiffer_k: number | null;
  /** how much is in a pack, in its unit; 1e-06 to 100000 */
  pack_amount: number | null;
  /** to be bought below this, in its unit; null: never; 0 to 100000 */
  lowest: number | null;
  /** ingredients as its label lists them, in order; "" when left out */
  ingredients: string;
  /** how many days it keeps; null: its label says; 1 to 10000 */
  best_by_days: number | null;
  /** who it is bought from */
  supplier_id: string | null;
  /** label */
  label: CaramelRowLabel;
};

/** one of the shop's chocolates */
export type ChocolateRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** the kind of chocolate; "dark_chocolate" when left out */
  chocolate: "dark_chocolate" | "milk_chocolate" | "white_chocolate";
  /** time until a dipped piece takes no more salt; 10 to 3600 s; 120.0 when left out */
  set_s: number;
  /** allergens on its label; [] when left out */
  contains: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** how much is in a pack, in its unit; 1e-06 to 100000 */
  pack_amount: number | null;
  /** to be bought below this, in its unit; null: never; 0 to 100000 */
  lowest: number | null;
  /** ingredients as its label lists them, in order; "" when left out */
  ingredients: string;
  /** how many days it keeps; null: its label says; 1 to 10000 */
  best_by_days: number | null;
  /** who it is bought from */
  supplier_id: string | null;
  /** targets */
  targets: ChocolateRowTargets;
};

/** one of the shop's products */
export type ProductRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** how it is made; "slab" when left out */
  kind: "slab" | "cluster";
  /** the caramel it is made of */
  caramel_id: string | null;
  /** length of one centre; 0.005 to 0.3 m */
  piece_length_m: number | null;
  /** width of one centre; 0.005 to 0.3 m */
  piece_width_m: number | null;
  /** slab height; 0.002 to 0.1 m */
  slab_height_m: number | null;
  /** trim on every edge; 0 to 0.1 m; 0.005 when left out */
  trim_m: number;
  /** cut loss between centres; 0 to 0.01 m; 0.0 when left out */
  kerf_m: number;
  /** centres in a box; 1 to 500 */
  per_box: number | null;
  /** allergens on its own label: what it is made of besides; [] when left out */
  contains: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** whether it gets a thin coat below before it is cut; false when left out */
  prebottom: boolean;
  /** what becomes of the cut pieces; "plain" when left out */
  finish: "plain" | "dipped" | "wrapped";
  /** the chocolate it is dipped in */
  chocolate_id: string | null;
  /** coating */
  coating: Coating;
  /** cluster */
  cluster: Cluster;
  /** pocket */
  pocket: Pocket;
};

/** one of the shop's thermometers */
export type ThermometerRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** how much too cold it reads; -10 to 10 K; 0.0 when left out */
  reads_low_k: number;
  /** scatter of its readings; 0.1 to 10 K; 2.0 when left out */
  sd_k: number;
};

/** one of the shop's materials */
export type MaterialRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** what it is for; "other" when left out */
  what: "under" | "salt" | "packaging" | "other";
  /** whether it is weighed or counted; "kg" when left out */
  unit: "kg" | "each";
  /** allergens on its label; [] when left out */
  contains: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** how much is in a pack, in its unit; 1e-06 to 100000 */
  pack_amount: number | null;
  /** to be bought below this, in its unit; null: never; 0 to 100000 */
  lowest: number | null;
  /** ingredients as its label lists them, in order; "" when left out */
  ingredients: string;
  /** how many days it keeps; null: its label says; 1 to 10000 */
  best_by_days: number | null;
  /** who it is bought from */
  supplier_id: string | null;
};

/** one of the shop's boxes */
export type BoxRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** what is in it; [] when left out */
  lines: BoxRowLine[];
  /** pockets across; null: no pockets; 1 to 100 */
  columns: number | null;
  /** pockets down; null: no pockets; 1 to 100 */
  rows: number | null;
  /** weight of the empty box with cups and lid; 0 to 10 kg */
  tare_kg: number | null;
  /** net weight its label declares; 0.001 to 100 kg */
  label_kg: number | null;
  /** its price, in the smallest coin; null: not set; 0 to 1e+09 */
  price_minor: number | null;
  /** tax on top of the price; 0 to 1 */
  tax_share: number | null;
  /** how many days it keeps from when it is packed; 1 to 10000 */
  shelf_days: number | null;
  /** width of its label; 0.01 to 0.5 m */
  label_width_m: number | null;
  /** height of its label; 0.01 to 0.5 m */
  label_height_m: number | null;
  /** box, cups, lid, label of one; [] when left out */
  packaging: BoxRowPackaging[];
};

/** one of the shop's customers */
export type CustomerRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** where it goes; "" when left out */
  address: string;
  /** whether it is the shop's own counter; false when left out */
  counter: boolean;
};

/** one of the shop's suppliers */
export type SupplierRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** where it comes from; "" when left out */
  address: string;
  /** its telephone; "" when left out */
  phone: string;
};

/** one of the shop's people */
export type PersonRow = {
  /** its id */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** one letter or two that stand for the name; "" when left out */
  initial: string;
  /** what this person does; "" when left out */
  role: string;
};

/** the fold of all that was set of the shop; what nobody has set is null or stands as assumed */
export type Shop = {
  /** the shop; null: there is none */
  id: string | null;
  /** the shop's name; "" when left out */
  name: string;
  /** whether it is a shop to try things with; false when left out */
  invented: boolean;
  /** language of screens and prints; "en" when left out */
  language: "en" | "es" | "es-MX";
  /** units */
  units: Units;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c: number;
  /** relative humidity as a fraction; null: nobody measured it; 0.01 to 1 */
  humidity: number | null;
  /** air of its refrigerator; 0 to 15 °C; 5.0 when left out */
  fridge_c: number;
  /** the maker's address, as labels name it; "" when left out */
  address: string;
  /** ISO 4217 code of the money it counts in; "" when left out */
  currency: string;
  /** what an hour of hands costs, in the smallest coin; 0 to 1e+09 */
  rate_minor_per_h: number | null;
  /** what a kilowatt hour costs, in the smallest coin; 0 to 1e+06 */
  energy_minor_per_kwh: number | null;
  /** when work begins, seconds of the day; 0 to 86400 s; 28800.0 when left out */
  open_s: number;
  /** when work ends, seconds of the day; 0 to 86400 s; 61200.0 when left out */
  close_s: number;
  /** days on which there is work; ["monday", "tuesday", "wednesday", "thursday", "friday"] when left out */
  work_days: ("monday" | "tuesday" | "wednesday" | "thursday" | "friday" | "saturday" | "sunday")[];
  /** whose rules labels and net contents follow; null: not chosen */
  rule: "us" | "eu" | "uk" | null;
  /** how lot codes are made: YY, Y, DDD, L stand for year, day of the year, letter; "YYDDDL" when left out */
  code_pattern: string;
  /** what a value rests on, by shop.<field> or <list>/<id>.<field> */
  basis: BasisByField;
  /** its ovens */
  ovens: OvenRow[];
  /** its vessels */
  vessels: VesselRow[];
  /** its bases */
  bases: BaseRow[];
  /** its bars */
  bars: BarRow[];
  /** its tables */
  tables: TableRow[];
  /** its frames */
  frames: FrameRow[];
  /** its trays */
  trays: TrayRow[];
  /** its funnels */
  funnels: FunnelRow[];
  /** its caramels */
  caramels: CaramelRow[];
  /** its chocolates */
  chocolates: ChocolateRow[];
  /** its products */
  products: ProductRow[];
  /** its thermometers */
  thermometers: ThermometerRow[];
  /** its materials */
  materials: MaterialRow[];
  /** its boxes */
  boxes: BoxRow[];
  /** its customers */
  customers: CustomerRow[];
  /** its suppliers */
  suppliers: SupplierRow[];
  /** its people */
  people: PersonRow[];
};

/** one field of the shop as the log has it */
export type ShopEdit = {
  /** shop, or <list>/<id> */
  doc: string;
  /** the field, a dotted path inside the row */
  field: string;
  /** its value; null takes it back */
  value: unknown;
  /** what it rests on */
  basis: "typed" | "measured" | "published" | "assumed";
};

/** what a closed batch tells */
export type Contribution = {
  /** the batch */
  batch_id: string;
  /** whether the shop leaves it out; false when left out */
  left_out: boolean;
  /** the oven */
  oven_id: string | null;
  /** the base */
  base_id: string | null;
  /** the product */
  product_id: string | null;
  /** the caramel */
  caramel_id: string | null;
  /** what the melt says of the oven */
  oven: ContributionOven | null;
  /** what the cooling says of the base */
  base: ContributionBase | null;
  /** what the touches say of the temperature it is cut at */
  ready: Ready | null;
  /** what was counted */
  pieces: Pieces | null;
  /** trim weighed, over the caramel weighed in; 0 to 1 */
  trim: number | null;
  /** left in the bowl, over the same; 0 to 0.3 */
  residue: number | null;
  /** chocolate taken up over the undipped weight, by ten pieces weighed; 0.01 to 5 */
  pickup: number | null;
  /** planned against happened; [] when left out */
  compared: Compared[];
  /** what the batch does not tell, and why; [] when left out */
  unused: Unused[];
};

/** what the shop's closed batches measured */
export type Measured = {
  /** by id and mass */
  ovens: MeasuredOven[];
  /** by id */
  bases: MeasuredBase[];
  /** by id */
  products: Product[];
  /** by id; [] when left out */
  caramels: Caramel[];
  /** what stays in the bowl; null: never weighed */
  residue: Trim | null;
  /** what was not taken in */
  ignored: MeasuredIgnored[];
  /** batches taken in; 0 to 100000 */
  n: number;
};

/** what a closed batch teaches */
export type Lesson = {
  /** the batch */
  batch_id: string;
  /** its name */
  name: string;
  /** when it was closed; ms */
  closed_at_ms: number;
  /** why the shop leaves it out; null: it does not */
  reason: string | null;
  /** what it tells; null: it cannot be read */
  contribution: Contribution | null;
};

/** a batch in a line */
export type Summary = {
  /** the batch */
  batch_id: string;
  /** its name; "" when left out */
  name: string;
  /** slab; "" when left out */
  kind: string;
  /** opened; -2e+14 to 2e+14 ms */
  opened_at_ms: number;
  /** closed, or null; -2e+14 to 2e+14 ms */
  closed_at_ms: number | null;
  /** the open step */
  step: string | null;
  /** counted, else planned; 0 to 1e+09 */
  pieces: number | null;
  /** weighed in, else planned; kg */
  caramel_kg: number | null;
  /** pieces counted by planned mass of one; null before the count; kg */
  good_kg: number | null;
  /** the phone that opened it; "" when left out */
  device_id: string;
  /** how many events it has; 0 to 1e+09; 0 when left out */
  events: number;
  /** what its label says; null: an older app made the line */
  label: FullLabel | null;
};

/** a lot: a delivery, or what was left of a batch */
export type Lot = {
  /** its id */
  id: string;
  /** what it is: caramels/<id>, chocolates/<id> or materials/<id>; "" when left out */
  material: string;
  /** unit of its amounts; "kg" when left out */
  unit: "kg" | "each";
  /** the batch it was left of */
  made_from: string | null;
  /** an id, or null */
  supplier_id: string | null;
  /** the supplier as it was typed; "" when left out */
  supplier: string;
  /** the supplier's lot; "" when left out */
  supplier_lot: string;
  /** how many packs; 0 to 100000; 0 when left out */
  packs: number;
  /** how much was got in all; 0 to 1e+10 */
  amount: number;
  /** what all of it cost; null: nobody knows; 0 to 1e+12 */
  price_minor: number | null;
  /** ISO 4217 code of its currency; empty: that of the shop; "" when left out */
  currency: string;
  /** best by; null: nobody knows */
  best_by: string | null;
  /** when it came; null: nobody has written it down; -1e+15 to 1e+15 ms */
  received_ms: number | null;
  /** when it was opened; -1e+15 to 1e+15 ms */
  opened_ms: number | null;
  /** how often it has been melted; 0 to 50; 0 when left out */
  remelts: number;
  /** counts; [] when left out */
  counts: FullCount[];
  /** what was thrown away; [] when left out */
  discarded: FullDiscarded[];
  /** photo of its label */
  photo_id: string | null;
  /** the lot it now belongs to */
  merged_into: string | null;
  /** since when; -1e+15 to 1e+15 ms */
  merged_ms: number | null;
  /** whether its amount went there; false: it was one delivery, written down twice; true when left out */
  adds: boolean;
};

/** what of a lot went into a batch or boxes */
export type StockUse = {
  /** its id */
  lot_id: string;
  /** how much, in the lot's unit; 0 to 100000 */
  amount: number;
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** the batch it went into; null: boxes */
  batch_id: string | null;
};

/** what is left of a lot */
export type LotLeft = {
  /** its id */
  lot_id: string;
  /** what it is */
  material: string;
  /** unit of its amounts */
  unit: "kg" | "each";
  /** how much came, with what was poured to it; -1e+15 to 1e+15 */
  got: number;
  /** how much went into batches and boxes; -1e+15 to 1e+15 */
  used: number;
  /** what is left; below zero: a difference; -1e+15 to 1e+15 */
  left: number;
  /** a day, YYYY-MM-DD */
  best_by: string | null;
  /** when it came; -1e+15 to 1e+15 ms */
  received_ms: number | null;
  /** whether its best by is over */
  is_past: boolean;
  /** whether there is some left to use */
  is_open: boolean;
  /** what does not add up */
  differences: ("below_zero" | "used_before_it_came" | "never_came" | "written_twice" | "ring")[];
};

/** what is left of a material */
export type MaterialLeft = {
  /** what it is: caramels/<id>, chocolates/<id> or materials/<id> */
  material: string;
  /** unit of its amounts */
  unit: "kg" | "each";
  /** what is left of all its lots; -1e+15 to 1e+15 */
  left: number;
  /** how much, in the lot's unit; 0 to 100000 */
  lowest: number | null;
  /** whether it is to be bought */
  is_low: boolean;
  /** a day, YYYY-MM-DD */
  best_by: string | null;
};

/** boxes packed together */
export type Pack = {
  /** its id */
  id: string;
  /** which box of the shop; null: nothing was packed */
  box_id: string | null;
  /** the batches its pieces are of; [] when left out */
  from: PackedFrom[];
  /** boxes, cups, labels by lots; [] when left out */
  lots: PackedLot[];
  /** the lot code on the label; "" when left out */
  code: string;
  /** a day, YYYY-MM-DD */
  made_on: string | null;
  /** a day, YYYY-MM-DD */
  best_by: string | null;
  /** whether they are sold as seconds; false when left out */
  seconds: boolean;
  /** how many boxes were packed; 0 to 100000; 0 when left out */
  packed: number;
  /** how many of them are still boxes; below zero: a difference; -1e+10 to 100000; 0 when left out */
  count: number;
  /** weighed; [] when left out */
  net_kg: number[];
  /** how many labels were printed; 0 to 1e+10; 0 when left out */
  printed: number;
  /** when they were packed; -1e+15 to 1e+15 ms */
  at_ms: number | null;
};

/** a counted batch */
export type PieceBatch = {
  /** its id */
  batch_id: string;
  /** what it is of; null: it was planned for no product */
  product_id: string | null;
  /** good pieces counted; 0 to 100000 */
  good: number;
};

/** good pieces of a batch that are in no box */
export type PiecesLeft = {
  /** its id */
  batch_id: string;
  /** good pieces in no box; below zero: a difference; -1e+10 to 100000 */
  pieces: number;
};

/** how many of a box can be filled */
export type BoxFilled = {
  /** its id */
  box_id: string;
  /** boxes that can be filled; 0 to 100000 */
  count: number;
  /** pieces of the first batch that are left over then; 0 to 100000 */
  loose: number;
};

/** pieces of a batch in boxes */
export type PackedFrom = {
  /** its id */
  batch_id: string;
  /** how many pieces; 1 to 100000 */
  pieces: number;
};

/** what boxes are packed in */
export type PackedLot = {
  /** its id */
  lot_id: string;
  /** how much, in the lot's unit; 1e-06 to 100000 */
  amount: number;
};

/** an order */
export type Order = {
  /** its id */
  id: string;
  /** a customer of the shop; null: only a name */
  customer_id: string | null;
  /** the customer's name; "" when left out */
  customer: string;
  /** when it is wanted; -1e+15 to 1e+15 ms */
  wanted_ms: number | null;
  /** what is wanted; [] when left out */
  lines: OrderLine[];
  /** agreed price of all; null: by the list; 0 to 1e+12 */
  price_minor: number | null;
  /** ISO 4217 code of its currency; empty: that of the shop; "" when left out */
  currency: string;
  /** a note; "" when left out */
  note: string;
  /** wanted again every week; null: once */
  repeats: "week" | null;
  /** whether it is stock for the shop's own counter; false when left out */
  counter: boolean;
  /** when it was placed; null: not known yet; -1e+15 to 1e+15 ms */
  placed_ms: number | null;
  /** when and why; null: it stands */
  cancelled: FullCancelled | null;
  /** what was handed over; [] when left out */
  handed: FullHanded[];
  /** how often; 0 to 20000; 0 when left out */
  handovers: number;
  /** how far it is; "open" when left out */
  state: "open" | "part" | "handed" | "cancelled";
  /** what does not add up; [] when left out */
  differences: FullAskedOrderDifference[];
};

/** so many boxes, pieces, or so much of a product */
export type OrderLine = {
  /** a box of the shop; null: single pieces or loose */
  box_id: string | null;
  /** a product of the shop; null: boxes */
  product_id: string | null;
  /** how many; 1 to 100000 */
  count: number | null;
  /** loose by weight; null: by count; 0.001 to 10000 kg */
  mass_kg: number | null;
};

/** an open order */
export type OpenOrder = {
  /** its id */
  order_id: string;
  /** whether it was wanted before now */
  is_late: boolean;
  /** what of it is wanted, packed and handed over */
  lines: OpenLine[];
  /** whether all of it is in hand */
  is_packed: boolean;
};

/** a line of an open order */
export type OpenLine = {
  /** a box of the shop; null: single pieces or loose */
  box_id: string | null;
  /** a product of the shop; null: boxes */
  product_id: string | null;
  /** how many; 1 to 100000 */
  count: number | null;
  /** loose by weight; null: by count; 0.001 to 10000 kg */
  mass_kg: number | null;
  /** how many, or how much (kg), was handed over; 0 to 1e+12 */
  handed: number;
  /** how many boxes in hand are for it; 0 to 1e+12 */
  packed: number;
  /** how many, or how much (kg), is still to be packed; 0 to 1e+12 */
  missing: number;
};

/** boxes of one kind, wanted and in hand */
export type BoxInHand = {
  /** its id */
  box_id: string;
  /** how many open orders want; 0 to 1e+12 */
  wanted: number;
  /** how many are packed and not handed over; -1e+12 to 1e+12 */
  in_hand: number;
  /** how many are to be packed; 0 to 1e+12 */
  missing: number;
};

/** boxes packed together, and what is left of them */
export type PackInHand = {
  /** its id */
  pack_id: string;
  /** how many are in hand; below zero: a difference; -1e+12 to 1e+12 */
  left: number;
};

/** an event as a phone wrote it, and what the server added */
export type ServedEvent = {
  /** UUIDv7 made on the phone */
  id: string;
  /** the phone */
  device_id: string;
  /** the phone's own count; 0 to 9.0072e+15 */
  seq: number;
  /** by the phone's clock; ms */
  at_ms: number;
  /** server clock minus phone clock, estimated when it was written; ms */
  offset_ms: number;
  /** what happened */
  kind: string;
  /** what is told of it */
  body: Values;
  /** form of the envelope; 0 to 9.0072e+15 */
  v: number;
  /** the shop */
  shop_id: string;
  /** what it belongs to: batch/<id>, shop/<id>, or what a newer app knows */
  stream?: string;
  /** the batch of a batch's stream, else null */
  batch_id: string | null;
  /** the server's order; 0 to 1e+09 */
  position: number;
  /** when the server got it; ms */
  received_ms: number;
  /** what the server noticed: future, other_shop, relayed, ahead */
  flags: string[];
};

/** what became of one event */
export type PushAnswer = {
  /** its id; null: it had none */
  id: string | null;
  /** what became of it */
  result: "stored" | "known" | "refused";
  /** why it was refused: key of the sentence problem.<code> */
  code: string | null;
  /** which member is wrong */
  field: string | null;
  /** the server's order; 0 to 1e+09 */
  position: number | null;
  /** what the server noticed: future, other_shop, relayed, ahead */
  flags: string[];
};

/** an answer for each event that was sent, and the server's clock */
export type Pushed = {
  /** in the order of the events */
  answers: PushAnswer[];
  /** which log this is: another one, another database */
  log_id: string;
  /** when the request came in; ms */
  received_ms: number;
  /** when the reply went out; ms */
  sent_ms: number;
};

/** what a file that was taken in brought */
export type TakenIn = {
  /** documents that are new; 0 to 1e+09 */
  added: number;
  /** documents that were here already; 0 to 1e+09 */
  known: number;
};

/** events after a cursor, in the server's order */
export type Pulled = {
  /** which log this is: another one, another database */
  log_id: string;
  /** events, in the order of the log */
  events: ServedEvent[];
  /** whether there is more */
  more: boolean;
  /** `after` of the next pull; 0 to 1e+09 */
  cursor: number;
  /** `seen` of the next pull: tells whether the log is as it was; null: it is empty */
  cursor_mark: string | null;
};

/** the list of batches, newest first */
export type Batches = {
  /** batches in a line, newest first */
  batches: Summary[];
  /** whether there are older ones */
  more: boolean;
};

/** a page of the list of lots */
export type Lots = {
  /** latest first */
  documents: Lot[];
  /** whether there are older ones */
  more: boolean;
};

/** it */
export type LotRecord = {
  /** it */
  document: Lot | null;
  /** what broke in the app as its events were folded; null: nothing */
  broken: string | null;
  /** events, in the order of the log */
  events: ServedEvent[];
  /** more than a day ahead: in no fold */
  set_aside: ServedEvent[];
};

/** a page of the list of orders */
export type Orders = {
  /** latest first */
  documents: Order[];
  /** whether there are older ones */
  more: boolean;
};

/** it */
export type OrderRecord = {
  /** it */
  document: Order | null;
  /** what broke in the app as its events were folded; null: nothing */
  broken: string | null;
  /** events, in the order of the log */
  events: ServedEvent[];
  /** more than a day ahead: in no fold */
  set_aside: ServedEvent[];
};

/** a page of the list of packs */
export type Packs = {
  /** latest first */
  documents: Pack[];
  /** whether there are older ones */
  more: boolean;
};

/** it */
export type PackRecord = {
  /** it */
  document: Pack | null;
  /** what broke in the app as its events were folded; null: nothing */
  broken: string | null;
  /** events, in the order of the log */
  events: ServedEvent[];
  /** more than a day ahead: in no fold */
  set_aside: ServedEvent[];
};

/** what went into something and what came of it */
export type Traced = {
  /** both ways */
  trace: TraceWalkReply;
  /** what the nearest are called */
  names: Name[];
};

/** what batches closed last teach */
export type Contributions = {
  /** newest first */
  contributions: Lesson[];
};

/** everything about one batch */
export type ServerRecord = {
  /** the batch in a line */
  summary: Summary;
  /** its plan; null: its opening has not come, or holds none */
  plan: PlanDocument | null;
  /** its run; null: it cannot be folded */
  run: Run | null;
  /** what broke in the app as its events were folded; null: nothing */
  broken?: string | null;
  /** events, in the order of the log */
  events: ServedEvent[];
  /** more than a day ahead: in no fold */
  set_aside: ServedEvent[];
};

/** who answers, and its clock */
export type Health = {
  /** always amberbench */
  app: string;
  /** version of the engine */
  engine_version: string;
  /** the shop; null: there is none yet */
  shop_id: string | null;
  /** mistakes of the app since the server started; 0 to 1e+09 */
  errors?: number;
  /** when the newest backup was made; null: there is none; ms */
  backup_ms?: number | null;
  /** when the certificate of the server ends; ms */
  certificate_until_ms?: number;
  /** whole days until then; below zero once it has ended; -1e+06 to 1e+06 */
  certificate_days_left?: number;
  /** what this phone may do; an older server says nothing */
  role?: "reader" | "bench" | "owner";
  /** which log this is: another one, another database */
  log_id: string;
  /** when the request came in; ms */
  received_ms: number;
  /** when the reply went out; ms */
  sent_ms: number;
};

/** what the server says to who is not paired */
export type HealthForStrangers = {
  /** always false */
  paired: boolean;
};

/** a paired phone */
export type PairedPhone = {
  /** its id */
  phone_id: string;
  /** its name */
  name: string;
  /** reader: look and print; bench: run, record, plan; owner: shop, prices, phones */
  role: "reader" | "bench" | "owner";
  /** the name under which it writes events */
  device_id: string;
  /** when it was paired; ms */
  paired_ms: number;
  /** when it was last here, to five minutes; ms */
  seen_ms: number;
  /** whether it is the phone that asks */
  own: boolean;
};

/** all of them */
export type Phones = {
  /** in the order they were paired */
  phones: PairedPhone[];
};

/** what lets one phone in, once */
export type PairingOffer = {
  /** opened on the phone, it pairs it */
  link: string;
  /** the link as a QR code: address of a picture (a data URI) */
  picture: string;
  /** eight digits that do the same; null: only the link */
  digits: string | null;
  /** good until then; ms */
  expires_ms: number;
};

/** what a phone starts from */
export type Snapshot = {
  /** which log this is: another one, another database */
  log_id: string;
  /** the shop; null: there is none yet */
  shop: Shop | null;
  /** those of the shop, and of batches not closed */
  events: ServedEvent[];
  /** batches in a line, newest first */
  summaries: Summary[];
  /** `after` of the next pull; 0 to 1e+09 */
  cursor: number;
  /** `seen` of the next pull: tells whether the log is as it was; null: it is empty */
  cursor_mark: string | null;
  /** `after` of the next page; null: this is the last; 0 to 1e+09 */
  next?: number | null;
};

/** every error (RFC 9457, application/problem+json) */
export type ProblemDetails = {
  /** about:blank */
  type: string;
  /** name of the status */
  title: string;
  /** the status; 0 to 1e+09 */
  status: number;
  /** a plain sentence */
  detail: string;
  /** what is wrong with which field */
  errors: ProblemDocument[];
  /** of a mistake of the app: its name in the server's log */
  instance?: string;
  /** why the data cannot be used: key of the sentence server.data_<reason> */
  reason?: string;
};

/** the request to units.convert */
export type UnitsConvertRequest = {
  /** what to convert; -1e+12 to 1e+12 */
  value: number;
  /** its unit */
  from: string;
  /** the unit wanted */
  to: string;
};

/** the reply of units.convert */
export type UnitsConvertReply = {
  /** the converted value; -1e+16 to 1e+16 */
  value: number;
};

/** the request to materials.properties */
export type MaterialsPropertiesRequest = {
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** temperature; -40 to 150 °C */
  temp_c: number;
};

/** the reply of materials.properties */
export type MaterialsPropertiesReply = {
  /** density; 0 to 20000 kg/m³ */
  density_kg_m3: number;
  /** specific heat; 0 to 10000 J/(kg K) */
  heat_capacity_j_kgk: number;
  /** thermal conductivity; 0 to 500 W/(m K) */
  conductivity_w_mk: number;
  /** thermal diffusivity; 0 to 5 m²/s */
  diffusivity_m2_s: number;
};

/** the request to materials.heat */
export type MaterialsHeatRequest = {
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** mass; 0 to 1000 kg */
  mass_kg: number;
  /** first temperature; -40 to 150 °C */
  from_c: number;
  /** last temperature; -40 to 150 °C */
  to_c: number;
};

/** the reply of materials.heat */
export type MaterialsHeatReply = {
  /** heat taken up; negative when cooling; -1e+10 to 1e+10 J */
  energy_j: number;
};

/** the request to room.dew_point */
export type RoomDewPointRequest = {
  /** temperature of the air; -40 to 50 °C */
  temp_c: number;
  /** relative humidity as a fraction; 0.01 to 1 */
  humidity: number;
};

/** the reply of room.dew_point */
export type RoomDewPointReply = {
  /** temperature of a surface that just begins to sweat; -100 to 60 °C */
  dew_point_c: number;
};

/** the request to flow.viscosity */
export type FlowViscosityRequest = {
  /** temperature of the caramel; -40 to 150 °C */
  temp_c: number;
  /** mass fraction of water in the caramel; 0.01 to 0.3 */
  moisture: number;
  /** mass fraction of fat; 0 to 0.5; 0.081 when left out */
  fat?: number | null;
  /** glass temperature of its solids without water; 0 to 120 °C; 62.0 when left out */
  dry_glass_c?: number | null;
  /** its glass temperature, where known; null: by water; -130 to 120 °C */
  glass_c?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of flow.viscosity */
export type FlowViscosityReply = {
  /** viscosity; 0 to 1e+13 Pa s */
  viscosity_pa_s: number;
  /** 10 % point; 0 to 1e+13 Pa s */
  low_pa_s: number;
  /** 90 % point; 0 to 1e+14 Pa s */
  high_pa_s: number;
  /** glass temperature; -140 to 120 °C */
  glass_c: number;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to melt.oven_from_water_test */
export type MeltOvenFromWaterTestRequest = {
  /** water; 0.2 to 3 kg */
  water_kg: number;
  /** stirred water before; 0 to 60 °C */
  start_c: number;
  /** stirred water after; 1 to 95 °C */
  end_c: number;
  /** time; 20 to 600 s */
  seconds_s: number;
  /** empty container; 0.01 to 5 kg */
  container_kg?: number | null;
  /** room temperature; -5 to 45 °C */
  room_c?: number | null;
};

/** the reply of melt.oven_from_water_test */
export type MeltOvenFromWaterTestReply = {
  /** power the water absorbed; 0 to 5000 W */
  power_w: number;
  /** its standard deviation; 0 to 5000 W */
  power_sd_w: number;
};

/** the request to melt.plan */
export type MeltPlanRequest = {
  /** caramel in the bowl; 0.05 to 10 kg */
  mass_kg: number;
  /** temperature before heating; -30 to 150 °C; 21.0 when left out */
  start_c?: number | null;
  /** coolest bulk temperature to pour at; 30 to 120 °C; 71.0 when left out */
  window_low_c?: number | null;
  /** hottest bulk temperature to pour at; 30 to 120 °C; 77.0 when left out */
  window_high_c?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c?: number | null;
  /** bulk temperature from which it darkens; 40 to 140 °C; 82.0 when left out */
  warn_c?: number | null;
  /** bulk temperature at which heating stops; 40 to 140 °C; 85.0 when left out */
  stop_c?: number | null;
  /** longest burst; 5 to 300 s; 60.0 when left out */
  burst_s?: number | null;
  /** what the oven can set: 1, 5, 10, 15 or 30; 1 to 30 s; 5.0 when left out */
  step_s?: number | null;
  /** the microwave oven */
  oven: Oven;
  /** the bowl or jug; null: an ordinary one nobody weighed */
  vessel?: Vessel | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of melt.plan */
export type MeltPlanReply = {
  /** the plan, to be corrected by every reading; none when it starts in the window */
  bursts: Burst[];
  /** bursts and stirs together; 0 to 36000 s */
  total_s: number;
  /** energy the caramel and the vessel take up; -1e+08 to 1e+08 J */
  energy_j: number;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to melt.next_burst */
export type MeltNextBurstRequest = {
  /** caramel in the bowl; 0.05 to 10 kg */
  mass_kg: number;
  /** temperature before heating; -30 to 150 °C; 21.0 when left out */
  start_c?: number | null;
  /** coolest bulk temperature to pour at; 30 to 120 °C; 71.0 when left out */
  window_low_c?: number | null;
  /** hottest bulk temperature to pour at; 30 to 120 °C; 77.0 when left out */
  window_high_c?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c?: number | null;
  /** bulk temperature from which it darkens; 40 to 140 °C; 82.0 when left out */
  warn_c?: number | null;
  /** bulk temperature at which heating stops; 40 to 140 °C; 85.0 when left out */
  stop_c?: number | null;
  /** longest burst; 5 to 300 s; 60.0 when left out */
  burst_s?: number | null;
  /** what the oven can set: 1, 5, 10, 15 or 30; 1 to 30 s; 5.0 when left out */
  step_s?: number | null;
  /** the microwave oven */
  oven: Oven;
  /** the bowl or jug; null: an ordinary one nobody weighed */
  vessel?: Vessel | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
  /** what happened so far, in order */
  history: History[];
  /** standard deviation of start_c, where more than a block's; null: as a block's; 0 to 60 K */
  start_sd_k?: number | null;
};

/** the request to melt.plan_jacket */
export type MeltPlanJacketRequest = {
  /** the block, whole */
  block: Block;
  /** temperature before heating; -30 to 150 °C; 21.0 when left out */
  start_c?: number | null;
  /** the jacket's water; 40 to 140 °C */
  jacket_c: number;
  /** coolest bulk temperature to pour at; 30 to 120 °C; 71.0 when left out */
  window_low_c?: number | null;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** size of the pieces it was chopped into; null: whole; 0.005 to 0.6 m */
  chopped_m?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of melt.plan_jacket */
export type MeltPlanJacketReply = {
  /** time until it is in the window; 0 to 1e+08 s */
  seconds_s: number;
  /** 10 % point; 0 to 1e+08 s */
  low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  high_s: number;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to pour.plan */
export type PourPlanRequest = {
  /** the unknown */
  solve_for: "mass" | "length" | "height";
  /** caramel weighed in; 0.05 to 50 kg */
  mass_kg?: number | null;
  /** frame length; 0.02 to 5 m */
  length_m?: number | null;
  /** frame width; 0.02 to 5 m */
  width_m?: number | null;
  /** slab height wanted; 0.002 to 0.1 m */
  slab_height_m?: number | null;
  /** heights of the bars owned, one entry for each set that closes a frame, up to three stacked; null: any height */
  bars_m?: number[] | null;
  /** longest frame the table allows; 0.02 to 5 m */
  max_length_m?: number | null;
  /** widest frame the table allows; 0.02 to 5 m */
  max_width_m?: number | null;
  /** temperature at pouring; 20 to 130 °C; 74.0 when left out */
  pour_c?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** fraction of the caramel that stays in the bowl; 0 to 0.3; 0.02 when left out */
  residue?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of pour.plan */
export type PourPlanReply = {
  /** caramel weighed in; 0 to 50 kg */
  mass_kg: number;
  /** frame length; 0 to 5 m */
  length_m: number;
  /** frame width; 0 to 5 m */
  width_m: number;
  /** height of the poured slab; 0 to 0.1 m */
  slab_height_m: number;
  /** height once at room temperature; 0 to 0.12 m */
  settled_height_m: number;
  /** the bars to stack, thickest first */
  bars: number[];
  /** their total height; 0 to 0.2 m */
  bar_height_m: number;
  /** area inside the frame; 0 to 25 m² */
  area_m2: number;
  /** volume poured; 0 to 3 m³ */
  volume_m3: number;
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to cut.plan */
export type CutPlanRequest = {
  /** frame length; 0.02 to 5 m */
  length_m: number;
  /** frame width; 0.02 to 5 m */
  width_m: number;
  /** slab height after cooling; 0.001 to 0.1 m */
  thickness_m: number;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** length of one centre; 0.005 to 0.3 m */
  piece_length_m: number;
  /** width of one centre; 0.005 to 0.3 m */
  piece_width_m: number;
  /** trim on every edge; 0 to 0.1 m; 0.005 when left out */
  trim_m?: number | null;
  /** cut loss between centres; 0 to 0.01 m; 0.0 when left out */
  kerf_m?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of cut.plan */
export type CutPlanReply = {
  /** centres across the width; 1 to 5000 */
  rows: number;
  /** centres along the length; 1 to 5000 */
  columns: number;
  /** centres; 1 to 1e+06 */
  pieces: number;
  /** whether the centre's length lies across the frame */
  rotated: boolean;
  /** cuts that run along the length, from the long edge */
  cuts_along_m: number[];
  /** cuts that run across, from the short edge */
  cuts_across_m: number[];
  /** mass of one centre; 0 to 200 kg */
  piece_kg: number;
  /** mass of trim and cut loss; 0 to 50000 kg */
  trim_kg: number;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to cut.fit_frame */
export type CutFitFrameRequest = {
  /** centres wanted; 1 to 5000 */
  pieces: number;
  /** longest frame the bars and the table allow; 0.02 to 5 m */
  max_length_m: number;
  /** widest frame; 0.02 to 5 m */
  max_width_m: number;
  /** length of one centre; 0.005 to 0.3 m */
  piece_length_m: number;
  /** width of one centre; 0.005 to 0.3 m */
  piece_width_m: number;
  /** trim on every edge; 0 to 0.1 m; 0.005 when left out */
  trim_m?: number | null;
  /** cut loss between centres; 0 to 0.01 m; 0.0 when left out */
  kerf_m?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of cut.fit_frame */
export type CutFitFrameReply = {
  /** frames that fit, smallest area first */
  frames: Frame[];
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to cool.plan */
export type CoolPlanRequest = {
  /** slab height; 0.001 to 0.1 m */
  thickness_m: number;
  /** temperature when poured; 20 to 150 °C; 74.0 when left out */
  start_c?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** how the top gives off heat; "still_air" when left out */
  top?: "still_air" | "fan" | TopByH | null;
  /** what the slab lies on; null: bottom face given by `bottom` alone; "marble" when left out */
  base?: "steel_sheet" | "aluminium_tray" | "marble" | "granite" | "wood_board" | BaseByLayers | null;
  /** resistance of parchment between slab and base; 0 to 0.1 m² K/W; 0.005 when left out */
  contact_m2k_w?: number | null;
  /** how the underside gives off heat; "still_air" when left out */
  bottom?: "still_air" | "fan" | "insulated" | BottomByH | null;
  /** hottest point when ready for the knife; 5 to 60 °C; 27.0 when left out */
  target_c?: number | null;
  /** air of the refrigerator in which it is chilled where the room does not bring target_c; 0 to 15 °C; 5.0 when left out */
  fridge_c?: number | null;
  /** slab length; 0.02 to 5 m; 0.35 when left out */
  length_m?: number | null;
  /** slab width; 0.02 to 5 m; 0.35 when left out */
  width_m?: number | null;
  /** length of the base; null: no larger than the slab; 0.02 to 10 m */
  base_length_m?: number | null;
  /** width of the base; null: no larger than the slab; 0.02 to 10 m */
  base_width_m?: number | null;
  /** thickness of a built-in base; null: the usual one; 0.0005 to 0.2 m */
  base_thickness_m?: number | null;
  /** temperature of the base at pouring; null: room; -20 to 60 °C */
  base_start_c?: number | null;
  /** heat loss over that of the model; 0.2 to 5; 1.0 when left out */
  loss_factor?: number | null;
  /** standard deviation of the logarithm of loss_factor; 0.01 to 1; 0.2 when left out */
  loss_factor_sd?: number | null;
  /** spread of start, room and contact from batch to batch, over what is assumed of them; 0.05 to 5; 1.0 when left out */
  spread?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of cool.plan */
export type CoolPlanReply = {
  /** time after pouring until it can be cut; 0 to 1e+08 s */
  ready_s: number;
  /** 10 % point; 0 to 1e+08 s */
  ready_low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  ready_high_s: number;
  /** hottest point at ready; 5 to 60 °C */
  target_c: number;
  /** the chill that makes it ready; null: the room does */
  chill: Chill | null;
  /** in order of time; those never reached are left out */
  milestones: Milestone[];
  /** core and surface over time */
  curve: Curve[];
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
};

/** the reply of cool.refit */
export type CoolRefitReply = {
  /** time after pouring until it can be cut; 0 to 1e+08 s */
  ready_s: number;
  /** 10 % point; 0 to 1e+08 s */
  ready_low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  ready_high_s: number;
  /** hottest point at ready; 5 to 60 °C */
  target_c: number;
  /** the chill that makes it ready; null: the room does */
  chill: Chill | null;
  /** in order of time; those never reached are left out */
  milestones: Milestone[];
  /** core and surface over time */
  curve: Curve[];
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
  /** heat loss over that of the model, as fitted; 0.1 to 10 */
  loss_factor: number;
  /** standard deviation of its logarithm; 0 to 2 */
  loss_factor_sd: number;
};

/** the request to chocolate.coating */
export type ChocolateCoatingRequest = {
  /** one undipped centre; null: a cluster, coated by pick-up */
  piece?: Piece | null;
  /** weight of one undipped piece; null: by size and material; 0.0005 to 1 kg */
  centre_kg?: number | null;
  /** weighed: chocolate taken up over the undipped weight; 0.01 to 5 */
  pickup?: number | null;
  /** thickness of the coating; null: that of the method */
  thickness_m?: ThicknessM | null;
  /** how the pieces are coated; "fork" when left out */
  method?: "fork" | "enrober" | "enrober_with_bottomer" | null;
  /** thickness of the pre-bottom; 0: none; 0 to 0.005 m; 0.0 when left out */
  prebottom_m?: number | null;
  /** area that gets the pre-bottom, a whole slab; null: the centres' undersides; 0.0001 to 25 m² */
  prebottom_m2?: number | null;
  /** pieces to coat; 1 to 100000 */
  pieces: number;
  /** the kind of chocolate; "dark_chocolate" when left out */
  chocolate?: "dark_chocolate" | "milk_chocolate" | "white_chocolate" | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** chocolate that must stay in the bowl for the last piece to be dipped; 0 to 20 kg; 0.3 when left out */
  bowl_reserve_kg?: number | null;
  /** inside width of the bowl that the pieces are dipped in; null: its depth is not counted; 0.05 to 1 m */
  bowl_width_m?: number | null;
  /** what drips off or runs into a foot, over the coating; 0 to 0.5; 0.05 when left out */
  drip_share?: number | null;
  /** inside of the box's pocket; null: not compared */
  pocket_m?: PocketM | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of chocolate.coating */
export type ChocolateCoatingReply = {
  /** coating of one piece, without its pre-bottom; 0 to 10000 kg */
  per_piece_kg: number;
  /** share of chocolate, pre-bottom included, in the finished piece; 0 to 1 */
  share: number;
  /** weight of a finished piece; 0 to 100000 kg */
  piece_kg: number;
  /** chocolate for the pre-bottom; 0 to 100000 kg */
  prebottom_kg: number;
  /** chocolate on all pieces, without the pre-bottom; 0 to 1e+09 kg */
  coating_kg: number;
  /** chocolate that drips off or runs into a foot; 0 to 1e+09 kg */
  drip_kg: number;
  /** how deep the last piece is dipped; null: width or size not known; 0 to 1 m */
  depth_m: number | null;
  /** chocolate that stays in the bowl: the reserve, or what is so deep; 0 to 10000 kg */
  reserve_kg: number;
  /** chocolate to have: coating, pre-bottom, drips, reserve; 0 to 1e+09 kg */
  total_kg: number;
  /** the finished piece; null when its size is not known */
  outside_m: OutsideM | null;
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to chocolate.temper */
export type ChocolateTemperRequest = {
  /** the kind of chocolate; "dark_chocolate" when left out */
  chocolate?: "dark_chocolate" | "milk_chocolate" | "white_chocolate" | null;
  /** heat lines of the shop's own chocolate, from its label; null: those of its kind */
  targets?: Targets | null;
  /** chocolate wanted in temper, seed included; 0.05 to 100 kg */
  mass_kg: number;
  /** temperature of the melt; null: the coolest of its kind; 20 to 80 °C */
  melt_c?: number | null;
  /** temperature of the seed; null: the room's; -20 to 60 °C */
  seed_c?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** the bowl; null: none counted */
  bowl?: Vessel | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of chocolate.temper */
export type ChocolateTemperReply = {
  /** seed, finely cut; 0 to 100 kg */
  seed_kg: number;
  /** chocolate to melt; 0 to 100 kg */
  melt_kg: number;
  /** seed over all; 0 to 1 */
  seed_share: number;
  /** melt, stir the seed in, cool, work */
  steps: Step[];
  /** what to do when too warm, too cool, too thick */
  remedies: Warning[];
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to chocolate.hold */
export type ChocolateHoldRequest = {
  /** the kind of chocolate; "dark_chocolate" when left out */
  chocolate?: "dark_chocolate" | "milk_chocolate" | "white_chocolate" | null;
  /** heat lines of the shop's own chocolate, from its label; null: those of its kind */
  targets?: Targets | null;
  /** chocolate in the bowl; 0.05 to 100 kg */
  mass_kg: number;
  /** temperature of the bowl, stirred; 10 to 80 °C */
  now_c: number;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** the bowl; null: none counted */
  bowl?: Vessel | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of chocolate.hold */
export type ChocolateHoldReply = {
  /** where the bowl is now */
  state: "in_range" | "too_warm" | "too_cool";
  /** time until it leaves the working range; 0 when it is outside; 0 to 1e+08 s */
  seconds_s: number;
  /** 10 % point; 0 to 1e+08 s */
  low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  high_s: number;
  /** what to do; null: in range */
  remedy: Warning | null;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to chocolate.salting */
export type ChocolateSaltingRequest = {
  /** time from one piece to the next; 0.5 to 600 s */
  dip_s: number;
  /** time until a dipped piece takes no more salt; 10 to 3600 s; 120.0 when left out */
  set_s?: number | null;
  /** salt on one piece; null: not weighed; 1e-05 to 0.002 kg */
  salt_each_kg?: number | null;
  /** pieces to salt; 1 to 100000 */
  pieces?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of chocolate.salting */
export type ChocolateSaltingReply = {
  /** pieces to dip before the first of them is salted; 1 to 10000 */
  every: number;
  /** salt for all; null: not asked; 0 to 200 kg */
  salt_kg: number | null;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to deposit.fill */
export type DepositFillRequest = {
  /** heat the fill loses through wall and open top; 1 to 60 W/(m² K); 10.0 when left out */
  h_w_m2k?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** coolest temperature to deposit at; 30 to 120 °C; 71.0 when left out */
  window_low_c?: number | null;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c?: number | null;
  /** what runs out of the funnel, pauses included; 1e-06 to 3 kg/s */
  pace_kg_s: number;
  /** temperature of the fill; 0 to 150 °C */
  now_c: number;
  /** caramel in the funnel now; 0.005 to 20 kg */
  fill_kg: number;
};

/** the reply of deposit.fill */
export type DepositFillReply = {
  /** time until it leaves the window or is empty; 0: it is too cool; 0 to 1e+08 s */
  seconds_s: number;
};

/** the request to room.advise */
export type RoomAdviseRequest = {
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** relative humidity as a fraction; null: nobody measured it; 0.01 to 1 */
  humidity?: number | null;
  /** coldest surface that meets the air: chilled slab, dipped piece; -30 to 60 °C */
  surface_c?: number | null;
  /** centres that are to be dipped; -30 to 60 °C */
  centre_c?: number | null;
  /** the kind of chocolate; null: none is used; "dark_chocolate" when left out */
  chocolate?: "dark_chocolate" | "milk_chocolate" | "white_chocolate" | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of room.advise */
export type RoomAdviseReply = {
  /** temperature of a surface that just begins to sweat; -100 to 60 °C */
  dew_point_c: number | null;
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to run.replay */
export type RunReplayRequest = {
  /** the plan of the batch, or what a run takes of it */
  plan: PlanTaken;
  /** events, in any order */
  events: LoggedEvent[];
};

/** the reply of run.replay */
export type RunReplayReply = {
  /** the state of a batch, as `run.replay` makes it */
  run: Run;
};

/** the request to run.apply */
export type RunApplyRequest = {
  /** the state of a batch, as `run.replay` makes it */
  run: Run;
  /** an event */
  event: LoggedEvent;
};

/** the reply of run.apply */
export type RunApplyReply = {
  /** the state of a batch, as `run.replay` makes it */
  run: Run;
};

/** the request to run.decide */
export type RunDecideRequest = {
  /** the state of a batch, as `run.replay` makes it */
  run: Run;
  /** what is told, in its order */
  facts: Fact[];
};

/** the reply of run.decide */
export type RunDecideReply = {
  /** in their order */
  decided: (Values | null)[];
};

/** the request to run.advise */
export type RunAdviseRequest = {
  /** the state of a batch, as `run.replay` makes it */
  run: Run;
  /** corrected time now; 0 to 1e+14 ms */
  at_ms: number;
};

/** the request to batch.order */
export type BatchOrderRequest = {
  /** corrected time now; 0 to 1e+14 ms */
  at_ms: number;
  /** the batches of today */
  batches: Batch[];
};

/** the reply of batch.order */
export type BatchOrderReply = {
  /** in which order to take them */
  order: BatchOrderReplyOrder[];
  /** the bench as it stands */
  now: Now[];
  /** what to mind */
  warnings: Warning[];
};

/** the request to shop.fold */
export type ShopFoldRequest = {
  /** the shop; null: that of the first event */
  shop_id?: string | null;
  /** events of kind shop_set, in any order */
  events: BenchEvent[];
};

/** the reply of shop.fold */
export type ShopFoldReply = {
  /** the shop document */
  shop: Shop;
  /** what was passed over */
  ignored: Ignored[];
};

/** the request to shop.check */
export type ShopCheckRequest = {
  /** shop, or <list>/<id> */
  doc: string;
  /** values by field, as the form has them; null: not set */
  values: Values;
};

/** the reply of shop.check */
export type ShopCheckReply = {
  /** the same, as the log takes them */
  values: Values;
};

/** the request to shop.density */
export type ShopDensityRequest = {
  /** weight of the caramel; 0.005 to 20 kg */
  mass_kg: number;
  /** volume it fills; 1e-06 to 0.02 m³ */
  volume_m3: number;
};

/** the reply of shop.density */
export type ShopDensityReply = {
  /** its density; 800 to 1700 kg/m³ */
  density_kg_m3: number;
};

/** the request to slab.plan */
export type SlabPlanRequest = {
  /** caramel by weight */
  have?: Have | null;
  /** good centres, or boxes and centres a box */
  want?: Want | null;
  /** a frame in hand, or find one; "fit" when left out */
  frame?: "fit" | FrameByLength | null;
  /** slab height wanted; 0.002 to 0.1 m */
  slab_height_m: number;
  /** share of what is made that turns out good; 0.05 to 1; 1.0 when left out */
  yield_share?: number | null;
  /** trim over the caramel weighed in; null: as the cuts leave it; 0 to 0.9 */
  trim_share?: number | null;
  /** longest frame; 0.02 to 5 m; 0.6 when left out */
  max_length_m?: number | null;
  /** widest frame; 0.02 to 5 m; 0.4 when left out */
  max_width_m?: number | null;
  /** heights of the bars owned, one entry for each set that closes a frame, up to three stacked; null: any height */
  bars_m?: number[] | null;
  /** the bars owned, by height and length, up to three sets stacked, taken to be as wide as high; null: as bars_m */
  bars?: Bar[] | null;
  /** the microwave oven; needed without a jacket */
  oven?: Oven | null;
  /** melt in a water jacket instead of an oven; null: in the oven */
  jacket?: Jacket | null;
  /** the bowl or jug; null: an ordinary one nobody weighed */
  vessel?: Vessel | null;
  /** what the bowl holds, filled to the brim; null: unknown; 0.0003 to 0.2 m³ */
  vessel_volume_m3?: number | null;
  /** longest burst; 5 to 300 s; 60.0 when left out */
  burst_s?: number | null;
  /** what the oven can set: 1, 5, 10, 15 or 30; 1 to 30 s; 5.0 when left out */
  step_s?: number | null;
  /** what the slab lies on; null: bottom face given by `bottom` alone; "marble" when left out */
  base?: "steel_sheet" | "aluminium_tray" | "marble" | "granite" | "wood_board" | BaseByLayers | null;
  /** how the top gives off heat; "still_air" when left out */
  top?: "still_air" | "fan" | TopByH | null;
  /** how the underside gives off heat; "still_air" when left out */
  bottom?: "still_air" | "fan" | "insulated" | BottomByH | null;
  /** resistance of parchment between slab and base; 0 to 0.1 m² K/W; 0.005 when left out */
  contact_m2k_w?: number | null;
  /** hottest point when ready for the knife; 5 to 60 °C; 27.0 when left out */
  target_c?: number | null;
  /** air of the refrigerator in which it is chilled where the room does not bring target_c; 0 to 15 °C; 5.0 when left out */
  fridge_c?: number | null;
  /** length of the base; null: no larger than the slab; 0.02 to 10 m */
  base_length_m?: number | null;
  /** width of the base; null: no larger than the slab; 0.02 to 10 m */
  base_width_m?: number | null;
  /** thickness of a built-in base; null: the usual one; 0.0005 to 0.2 m */
  base_thickness_m?: number | null;
  /** heat loss over that of the model; 0.2 to 5; 1.0 when left out */
  loss_factor?: number | null;
  /** standard deviation of the logarithm of loss_factor; 0.01 to 1; 0.2 when left out */
  loss_factor_sd?: number | null;
  /** spread of start, room and contact from batch to batch, over what is assumed of them; 0.05 to 5; 1.0 when left out */
  spread?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** relative humidity as a fraction; null: nobody measured it; 0.01 to 1 */
  humidity?: number | null;
  /** temperature before heating; -30 to 150 °C; 21.0 when left out */
  start_c?: number | null;
  /** the heat lines of this caramel; {} when left out */
  windows?: Windows | null;
  /** fraction of the caramel that stays in the bowl; 0 to 0.3; 0.02 when left out */
  residue?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** it is as stiff as reckoned by its water in a room so much colder; null: no test said so; -30 to 40 K */
  stiffer_k?: number | null;
  /** weight of one block as bought; 0.05 to 50 kg */
  block_kg?: number | null;
  /** trim and leftovers to melt again; null: none */
  old?: Old | null;
  /** times that the caramel's label allows it to be melted again; null: not known; 0 to 10 */
  remelts_allowed?: number | null;
  /** dip the pieces in chocolate; null: they stay plain */
  dip?: Dip | null;
  /** what a stand-up test said of it; null: none was made */
  firmness?: "firm" | "borderline" | "slumps" | null;
  /** how a piece felt at delivery; null: not squeezed */
  squeeze?: "firm" | "soft" | "brittle" | null;
  /** length of one centre; 0.005 to 0.3 m */
  piece_length_m: number;
  /** width of one centre; 0.005 to 0.3 m */
  piece_width_m: number;
  /** trim on every edge; 0 to 0.1 m; 0.005 when left out */
  trim_m?: number | null;
  /** cut loss between centres; 0 to 0.01 m; 0.0 when left out */
  kerf_m?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of slab.plan */
export type SlabPlanReply = {
  /** old caramel in it, and how often what is left over has been melted again */
  remelt: Remelt;
  /** caramel to weigh in; 0 to 50 kg */
  caramel_kg: number;
  /** blocks to open; 0 to 1000 */
  blocks: number;
  /** left of the last block; 0 to 50 kg */
  leftover_kg: number;
  /** as pour.plan */
  pour: PourPlanReply;
  /** as cool.plan */
  cool: CoolPlanReply;
  /** the cut centre that waits longest until it is dipped; null: nothing is known of the caramel's water */
  square: Square | null;
  /** dew point of the room and what its air does, as room.advise */
  room: Room;
  /** the request to melt.plan, for melt.next_burst at the bench; in a jacket what is needed of it */
  melt_request: MeltRequest;
  /** the request to cool.plan, for cool.refit at the bench */
  cool_request: CoolRequest;
  /** what the plan could not be held to */
  sizes_unknown: ("bars" | "bowl")[];
  /** what to mind */
  warnings: Warning[];
  /** pieces that are likely to be good, by the share that turns out good; 0 to 1e+06 */
  good: number;
  /** the batches that make up what is asked for, in order */
  batches: SlabPlanReplyBatch[];
  /** all batches together */
  together: Together;
  /** trim and cut loss to expect: by its measured share, else by the cuts; 0 to 50 kg */
  trim_kg: number;
  /** as cut.plan */
  cut: Cut;
  /** as melt.plan; null in a jacket */
  melt: MeltPlanReply | null;
  /** as melt.plan_jacket; null in an oven */
  jacket: MeltPlanJacketReply | null;
  /** other frames that would do */
  frames: Frame[];
  /** chocolate, outside size and salting as chocolate.coating and chocolate.salting; null: not dipped */
  dip: SlabPlanReplyDip | null;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to cluster.learn */
export type ClusterLearnRequest = {
  /** finished clusters that were weighed together; 1 to 200 */
  clusters: number;
  /** their weight together; 0.001 to 20 kg */
  together_kg: number;
  /** weight of what lies under all of them; null: as planned; 0 to 20 kg */
  under_kg?: number | null;
  /** what is counted out under each cluster; [] when left out */
  under?: Under[] | null;
  /** a level bed inside the rim of the tray, as far as rows are laid; null: none */
  bed?: Bed | null;
  /** widths of some of them, by ruler */
  across_m: number[];
  /** one first deposit, as planned; 0.0005 to 0.5 kg */
  deposit_kg?: number | null;
  /** one second deposit, as planned; 0: none was laid; 0 to 0.5 kg; 0.0 when left out */
  second_kg?: number | null;
  /** width that was planned; null: none; 0.01 to 0.2 m */
  spread_m?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
};

/** the reply of cluster.learn */
export type ClusterLearnReply = {
  /** one first deposit, the mean; 0 to 20 kg */
  deposit_kg: number;
  /** 10 % point of it; 0 to 20 kg */
  deposit_low_kg: number;
  /** 90 % point of it; 0 to 20 kg */
  deposit_high_kg: number;
  /** one second deposit, by its planned share; 0 to 20 kg */
  second_kg: number;
  /** what lies under one; 0 to 20 kg */
  under_each_kg: number;
  /** across a deposit, the mean; 0 to 1 m */
  spread_m: number;
  /** 10 % point of it; 0 to 1 m */
  spread_low_m: number;
  /** 90 % point of it; 0 to 1 m */
  spread_high_m: number;
  /** what the planned width makes of this weight; null: none; 0 to 10 m */
  planned_spread_m: number | null;
  /** measured width over that; null: none; 0 to 1000 */
  spread_share: number | null;
};

/** the request to cluster.plan */
export type ClusterPlanRequest = {
  /** clusters wanted, in laying order; sizes may differ; empty: as many as caramel_kg gives; [] when left out */
  rows?: Row[] | null;
  /** caramel in hand; null: as rows want; 0.05 to 50 kg */
  caramel_kg?: number | null;
  /** one first deposit of the caramel in hand; 0.0005 to 0.5 kg */
  deposit_kg?: number | null;
  /** one second deposit; 0: none; 0 to 0.5 kg; 0.0 when left out */
  second_kg?: number | null;
  /** what is counted out under each cluster; [] when left out */
  under?: Under[] | null;
  /** a level bed inside the rim of the tray, as far as rows are laid; null: none */
  bed?: Bed | null;
  /** the tray */
  tray: Tray;
  /** what the tray is made of; "aluminium_tray" when left out */
  base?: "steel_sheet" | "aluminium_tray" | "marble" | "granite" | "wood_board" | BaseByLayers | null;
  /** across the largest first deposit once it lies; 0.01 to 0.2 m */
  spread_m: number;
  /** free between two deposits; 0 to 0.3 m; 0.008 when left out */
  gap_m?: number | null;
  /** the funnel */
  funnel: Funnel;
  /** pace of the hand, per minute; 1 to 300; 20.0 when left out */
  deposits_per_min?: number | null;
  /** temperature before heating; -30 to 150 °C; 21.0 when left out */
  start_c?: number | null;
  /** coolest temperature to deposit at; 30 to 120 °C; 71.0 when left out */
  window_low_c?: number | null;
  /** hottest temperature to deposit at; 30 to 120 °C; 82.0 when left out */
  window_high_c?: number | null;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c?: number | null;
  /** bulk temperature from which it darkens; 40 to 140 °C; 82.0 when left out */
  warn_c?: number | null;
  /** bulk temperature at which heating stops; 40 to 140 °C; 85.0 when left out */
  stop_c?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** hottest point of a slab of it that is ready to cut; 5 to 60 °C; 27.0 when left out */
  target_c?: number | null;
  /** air of the refrigerator in which it is chilled where the room does not bring target_c; 0 to 15 °C; 5.0 when left out */
  fridge_c?: number | null;
  /** relative humidity as a fraction; null: nobody measured it; 0.01 to 1 */
  humidity?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** the microwave oven */
  oven: Oven;
  /** the bowl or jug; null: an ordinary one nobody weighed */
  vessel?: Vessel | null;
  /** what the bowl holds, filled to the brim; null: unknown; 0.0003 to 0.2 m³ */
  vessel_volume_m3?: number | null;
  /** share of what is made that turns out good; 0.05 to 1; 1.0 when left out */
  yield_share?: number | null;
  /** what the oven can set: 1, 5, 10, 15 or 30; 1 to 30 s; 5.0 when left out */
  step_s?: number | null;
  /** weight of one block as bought; 0.05 to 50 kg */
  block_kg?: number | null;
  /** fraction of the caramel that stays in the bowl; 0 to 0.3; 0.02 when left out */
  residue?: number | null;
  /** trim and leftovers to melt again; null: none */
  old?: Old | null;
  /** times that the caramel's label allows it to be melted again; null: not known; 0 to 10 */
  remelts_allowed?: number | null;
  /** dip the clusters in chocolate, by weighed pick-up; null: they stay plain */
  dip?: Dip | null;
  /** what a stand-up test said of it; null: none was made */
  firmness?: "firm" | "borderline" | "slumps" | null;
  /** how a piece felt at delivery; null: not squeezed */
  squeeze?: "firm" | "soft" | "brittle" | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of cluster.plan */
export type ClusterPlanReply = {
  /** pieces that are likely to be good, by the share that turns out good; 0 to 1e+06 */
  good: number;
  /** the batches that make up what is asked for, in order */
  batches: ClusterPlanReplyBatch[];
  /** all batches together */
  together: Together;
  /** old caramel in it, and how often what is left over has been melted again */
  remelt: Remelt;
  /** what the plan was not held to */
  sizes_unknown: "bowl"[];
  /** how the deposits lie */
  pattern: "square" | "staggered_long" | "staggered_short";
  /** deposits on a full tray; 1 to 10000 */
  per_tray: number;
  /** trays; 1 to 20000 */
  trays: number;
  /** middles of the deposits of a full tray, in laying order, from one corner of the tray */
  positions_m: number[][];
  /** clusters; 1 to 100000 */
  clusters: number;
  /** clusters of each size, in laying order */
  sizes: Size[];
  /** what lies on which trays, in laying order; empty: all deposits are alike */
  by_tray: ByTray[];
  /** one second deposit; 0: none; 0 to 0.5 kg */
  second_kg: number;
  /** all deposits together; 0 to 20 kg */
  deposits_kg: number;
  /** caramel to weigh in; 0 to 20 kg */
  caramel_kg: number;
  /** one finished cluster, what lies under it included; the mean; 0 to 10000 kg */
  piece_kg: number;
  /** what goes under */
  under: ClusterPlanReplyUnder[];
  /** what a bed weighs as far as rows are laid; null: counted out */
  bed: ClusterPlanReplyBed | null;
  /** deposits that a fill gives before it is empty; 1 to 100000 */
  deposits_per_fill: number;
  /** one fill; 0 to 50 kg */
  fill_kg: number;
  /** time until a fill, emptying at the pace, leaves its window or is empty; 0 to 1e+08 s */
  fill_s: number;
  /** what the funnel takes where that is all there is; 0 to 50 kg */
  most_fill_kg: number;
  /** time a fresh fill stays warm enough as it empties, on the safe side; sooner empty: as if just so slowly; 0 to 1e+08 s */
  safe_s: number;
  /** time a fresh fill that stands stays warm enough, on the safe side; 0 to 1e+08 s */
  stands_s: number;
  /** fills; 1 to 100000 */
  fills: number;
  /** times the caramel has to be warmed again; 0 to 100000 */
  reheats: number;
  /** what no fill is sure to lay: too cool by then, and too little to heat again; 0 to 20 kg */
  rest_kg: number;
  /** time from the first fill to the last deposit, reheating and waiting included, a quarter slower; 0 to 1e+08 s */
  laying_s: number;
  /** the same from the first burst on; 0 to 1e+08 s */
  bench_s: number;
  /** time to lay a full tray; 0 to 1e+08 s */
  tray_s: number;
  /** when a second deposit may go on, after the first was laid; null: none is planned */
  second: Second | null;
  /** when the tray can be freed, after its last deposit was laid */
  free: Free;
  /** the chill of a tray that is not free by free.from_s; null: the room frees it */
  chill: ClusterPlanReplyChill | null;
  /** as melt.plan */
  melt: MeltPlanReply;
  /** the request to melt.plan, for melt.next_burst at the bench */
  melt_request: MeltRequest;
  /** the request to deposit.fill without now_c and fill_kg, for the bench */
  fill_request: FillRequest;
  /** blocks to open; 0 to 1000 */
  blocks: number;
  /** left of the last block; without block_kg, of the caramel in hand; 0 to 50 kg */
  leftover_kg: number;
  /** chocolate, outside size and salting as chocolate.coating and chocolate.salting; null: not dipped */
  dip: SlabPlanReplyDip | null;
  /** what to mind */
  warnings: Warning[];
  /** dew point of the room and what its air does, as room.advise */
  room: Room;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the reply of chocolate.plan */
export type ChocolatePlanReply = {
  /** seed, finely cut; 0 to 100 kg */
  seed_kg: number;
  /** chocolate to melt; 0 to 100 kg */
  melt_kg: number;
  /** seed over all; 0 to 1 */
  seed_share: number;
  /** melt, stir the seed in, cool, work */
  steps: Step[];
  /** what to do when too warm, too cool, too thick */
  remedies: Warning[];
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
  /** time it stays in its working range, from the upper end of it */
  hold: Hold;
  /** what the bench reckons with: the request, its defaults filled in */
  bowl_request: BowlRequest;
};

/** the request to flow.stand_up_test */
export type FlowStandUpTestRequest = {
  /** heights of the cube, the fresh one first */
  heights: Height[];
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: BasisByField | null;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: BatchesByField | null;
};

/** the reply of flow.stand_up_test */
export type FlowStandUpTestReply = {
  /** share of its first height that is lost; 0 to 1 */
  lost_fraction: number;
  /** whether it stays square in this room */
  verdict: "firm" | "borderline" | "slumps";
  /** viscosity in this room, at least; 0 to 1e+13 Pa s */
  viscosity_pa_s: number;
  /** it is as stiff as reckoned by its water in a room so much colder; null: no test said so; -30 to 40 K */
  stiffer_k: number | null;
  /** warmest room in which it stays square for an hour; null: unknown; -300 to 200 °C */
  square_to_c: number | null;
  /** every input that went into the answer */
  inputs: Input[];
};

/** the request to learn.contribution */
export type LearnContributionRequest = {
  /** the batch */
  batch_id: string;
  /** its plan document */
  plan: PlanDocument;
  /** its run, as `run.replay` makes it */
  run: Run;
};

/** the reply of learn.contribution */
export type LearnContributionReply = {
  /** what it tells */
  contribution: Contribution;
};

/** the request to learn.fold */
export type LearnFoldRequest = {
  /** contributions of closed batches, in any order */
  batches: Contribution[];
};

/** the request to learn.apply */
export type LearnApplyRequest = {
  /** the reply of learn.fold */
  measured: Measured;
  /** a request to the function */
  request: PlanRequest;
  /** which function it is for; "slab.plan" when left out */
  function?: "slab.plan" | "cluster.plan" | null;
  /** the oven it uses */
  oven_id?: string | null;
  /** the base it uses */
  base_id?: string | null;
  /** the product it makes */
  product_id?: string | null;
  /** the caramel it is made of */
  caramel_id?: string | null;
};

/** the reply of learn.apply */
export type LearnApplyReply = {
  /** the same request with the shop's measured values in it */
  request: PlanRequest;
  /** what was taken in */
  used: Used[];
};

/** the request to schedule.tasks */
export type ScheduleTasksRequest = {
  /** the shop */
  shop: Shop;
  /** the days that are planned, today first */
  days: Day[];
  /** corrected time now; 0 to 1e+14 ms */
  now_ms: number;
  /** planned and running batches */
  batches: ScheduleTasksRequestBatch[];
  /** open orders; [] when left out */
  orders?: ScheduleTasksRequestOrder[] | null;
  /** batches that are over; [] when left out */
  closed?: Closed[] | null;
};

/** the reply of schedule.tasks */
export type ScheduleTasksReply = {
  /** for schedule.plan */
  day: ScheduleTasksReplyDay;
  /** what each task is, in the same order */
  rows: ScheduleTasksReplyRow[];
  /** where the seconds of the day begin; 0 to 1e+14 ms */
  start_ms: number;
  /** batches for which there was no room */
  left_out: string[];
};

/** the request to schedule.plan */
export type SchedulePlanRequest = {
  /** the tasks */
  tasks: AskedTask[];
  /** the jobs */
  jobs: AskedJob[];
  /** ovens, bars, table, trays, bowls; [] when left out */
  resources?: AskedResource[] | null;
  /** how many people; 0 to 20; 1 when left out */
  people?: number | null;
  /** when people work; none: round the clock; [] when left out */
  hours?: AskedHour[] | null;
  /** a wash of tools, surfaces and hands; 0 to 7200 s; 900.0 when left out */
  wash_s?: number | null;
  /** nothing starts before; null: the start, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  now_s?: number | null;
  /** how often all tasks may be placed to look for a better; 1 to 400; 1 when left out */
  rounds?: number | null;
  /** another seed looks elsewhere; 0 to 2.14748e+09; 1 when left out */
  seed?: number | null;
  /** `order` of an earlier reply, to go on from; [] when left out */
  order?: string[] | null;
};

/** the reply of schedule.plan */
export type SchedulePlanReply = {
  /** the tasks, as they were given */
  tasks: SchedulePlanReplyTask[];
  /** the jobs, as they were given */
  jobs: SchedulePlanReplyJob[];
  /** how many are late; 0 to 100 */
  late_jobs: number;
  /** how late they are in all; 0 to 1e+09 s */
  late_s: number;
  /** when all is done, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  end_s: number;
  /** pinned tasks that cannot stand where they are */
  conflicts: Conflict[];
  /** of what one more would help, the most useful first */
  helps: Help[];
  /** the first task of each group, by start */
  order: string[];
  /** how many rounds it took; 0 to 40000 */
  rounds: number;
};

/** the request to net.check */
export type NetCheckRequest = {
  /** whose rule: us, or eu (the UK's is alike) */
  rule: "us" | "eu";
  /** net weight that the label declares; 0.005 to 25 kg */
  label_kg: number;
  /** by package; [] when left out */
  net_kg?: number[] | null;
  /** packages of the lot; 1 to 1e+06 */
  lot_size: number;
  /** division of the scale; null: unknown; 1e-06 to 1 kg */
  division_kg?: number | null;
};

/** the reply of net.check */
export type NetCheckReply = {
  /** packages to weigh in all, as far as it is known; 1 to 1e+06 */
  wanted: number;
  /** mean of net less label; null: none weighed; -30 to 30 kg */
  mean_error_kg: number | null;
  /** scatter; null below two; 0 to 30 kg */
  sd_kg: number | null;
  /** what one package may be short; 0 to 30 kg */
  most_short_kg: number;
  /** how far the mean may lie below; null: not known yet; 0 to 300 kg */
  mean_limit_kg: number | null;
  /** packages that are short by more than one may be; 0 to 500 */
  short: number;
  /** how many may be; 0 to 1e+06 */
  short_allowed: number;
  /** eu: packages short by more than twice that; 0 to 500 */
  far_short: number;
  /** the mean */
  mean: "open" | "pass" | "fail";
  /** each package */
  each: "open" | "pass" | "fail";
  /** the lot */
  verdict: "open" | "pass" | "fail";
  /** the coarsest division that will do; 0 to 1 kg */
  division_wanted_kg: number;
  /** whether the scale is fine enough; null: unknown */
  scale_fits: boolean | null;
};

/** the request to label.net_weight */
export type LabelNetWeightRequest = {
  /** net weight that the label declares; 0.005 to 25 kg */
  label_kg: number;
  /** whose rule: us, or eu (the UK's is alike) */
  rule: "us" | "eu";
  /** main face of the package; null: unknown; 0.0001 to 10 m² */
  face_m2?: number | null;
};

/** the reply of label.net_weight */
export type LabelNetWeightReply = {
  /** in grams; 0 to 25000 */
  grams: number;
  /** in ounces; 0 to 900 */
  ounces: number;
  /** whole pounds; 0 to 60 */
  pounds: number;
  /** ounces beside them; 0 to 16 */
  rest_ounces: number;
  /** least height of its letters; null: unknown; 0 to 0.02 m */
  letter_m: number | null;
  /** whether the package's main face has to be told */
  area_wanted: boolean;
};

/** the request to label.content */
export type LabelContentRequest = {
  /** whose rule */
  rule: "us" | "eu" | "uk";
  /** what it is called */
  name: string;
  /** what went in */
  parts: Part[];
  /** what was on the bench unwashed; [] when left out */
  may_contain?: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[] | null;
  /** what allergens are called on this label, the word to print first; [] when left out */
  words?: Word[] | null;
  /** net weight that the label declares; null: not set; 0.005 to 25 kg */
  label_kg?: number | null;
  /** main face of the package; null: unknown; 0.0001 to 10 m² */
  face_m2?: number | null;
  /** its lot; "" when left out */
  code?: string | null;
  /** a day, YYYY-MM-DD; null: not set */
  made_on?: string | null;
  /** a day, YYYY-MM-DD; null: not set */
  best_by?: string | null;
  /** the maker's address; "" when left out */
  address?: string | null;
};

/** the reply of label.content */
export type LabelContentReply = {
  /** what it is called */
  name: string;
  /** the list of ingredients, piece by piece */
  ingredients: Ingredient[];
  /** allergens of the line of their own; us alone */
  contains: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** allergens that the rule names */
  allergens: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** what may be in it besides */
  may_contain: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** the declared weight; null: not set */
  net: LabelNetWeightReply | null;
  /** its lot; "" when left out */
  code: string;
  /** a day; null: not set */
  made_on: string | null;
  /** a day; null: not set */
  best_by: string | null;
  /** the maker's address; "" when left out */
  address: string;
  /** what to mind */
  warnings: LabelContentReplyWarning[];
  /** whether nothing is missing that a label for sale needs */
  is_complete: boolean;
};

/** the request to label.nutrition */
export type LabelNutritionRequest = {
  /** by nutrient */
  amounts: Amounts;
};

/** the reply of label.nutrition */
export type LabelNutritionReply = {
  /** figures by nutrient, as they are declared */
  declared: Values;
};

/** the request to label.lot_code */
export type LabelLotCodeRequest = {
  /** a day, YYYY-MM-DD */
  made_on: string;
  /** how codes are made; "YYYY-DDD-A" when left out */
  pattern?: string | null;
  /** codes that are taken; [] when left out */
  used?: string[] | null;
};

/** the reply of label.lot_code */
export type LabelLotCodeReply = {
  /** the code */
  code: string;
};

/** the request to label.best_by */
export type LabelBestByRequest = {
  /** a day, YYYY-MM-DD */
  made_on: string;
  /** shelf life of the box; 1 to 1500 */
  shelf_days: number;
  /** what went in; [] when left out */
  parts?: LabelBestByRequestPart[] | null;
};

/** the reply of label.best_by */
export type LabelBestByReply = {
  /** a day, YYYY-MM-DD */
  best_by: string;
  /** the part that ends first; null: the shelf life */
  because: string | null;
  /** from the day it was made; 0 to 1500 */
  days: number;
};

/** the request to label.check_digit */
export type LabelCheckDigitRequest = {
  /** the number without its check digit */
  digits: string;
};

/** the reply of label.check_digit */
export type LabelCheckDigitReply = {
  /** its check digit; 0 to 9 */
  check_digit: number;
};

/** the request to trace.walk */
export type TraceWalkRequest = {
  /** <kind>/<id>: lot, batch, pack, order or customer */
  start: string;
  /** what went into what; [] when left out */
  links?: Link[] | null;
  /** lots; [] when left out */
  lots?: AskedLot[] | null;
  /** batches; [] when left out */
  batches?: TraceWalkRequestBatch[] | null;
  /** boxes packed; [] when left out */
  packs?: AskedPack[] | null;
  /** orders; [] when left out */
  orders?: AskedOrder[] | null;
};

/** the reply of trace.walk */
export type TraceWalkReply = {
  /** what went into it, nearest first */
  back: string[];
  /** what came of it, nearest first */
  forward: string[];
  /** the links among them */
  links: FullLink[];
  /** lots it goes back to that came from outside */
  deliveries: string[];
  /** who got something of it */
  customers: string[];
};

/** the request to needs.gather */
export type NeedsGatherRequest = {
  /** the shop */
  shop: Shop;
  /** open orders */
  orders: NeedsGatherRequestOrder[];
  /** what there is, oldest best-by first; [] when left out */
  lots?: NeedsGatherRequestLot[] | null;
  /** open ones, and those closed lately */
  batches: NeedsGatherRequestBatch[];
  /** what was packed; [] when left out */
  packs?: AskedPack[] | null;
  /** corrected time now; 0 to 1e+14 ms */
  now_ms: number;
};

/** the reply of needs.gather */
export type NeedsGatherReply = {
  /** open orders */
  orders: FullNeedsGatherRequestOrder[];
  /** the shop's boxes */
  boxes: Boxe[];
  /** the shop's products */
  products: NeedsGatherReplyProduct[];
  /** what there is, oldest best-by first; [] when left out */
  lots: FullNeedsGatherRequestLot[];
  /** products whose size nobody has said */
  unsized: string[];
};

/** the request to needs.plan */
export type NeedsPlanRequest = {
  /** open orders */
  orders: NeedsGatherRequestOrder[];
  /** the shop's boxes */
  boxes: AskedBoxe[];
  /** the shop's products */
  products: AskedNeedsGatherReplyProduct[];
  /** what there is, oldest best-by first; [] when left out */
  lots?: NeedsGatherRequestLot[] | null;
};

/** the reply of needs.plan */
export type NeedsPlanReply = {
  /** what is to be made */
  products: NeedsPlanReplyProduct[];
  /** what goes in */
  materials: NeedsPlanReplyMaterial[];
  /** boxes and products that are gone */
  unknown: Unknown[];
};

/** the request to cost.batch */
export type CostBatchRequest = {
  /** what went in */
  uses: Use[];
  /** share of what was made that was thrown away or bad; 0 to 1 */
  waste_share?: number | null;
  /** hands on it; null: not known; 0 to 1e+07 s */
  hands_s?: number | null;
  /** an hour of hands; null: not reckoned; 0 to 1e+12 */
  rate_minor_per_h?: number | null;
  /** energy of the bursts; null: not known; 0 to 1e+12 J */
  energy_j?: number | null;
  /** a kilowatt hour; null: not reckoned; 0 to 1e+12 */
  energy_minor_per_kwh?: number | null;
  /** good pieces; 0 to 1e+07 */
  pieces: number;
  /** boxes it goes into; [] when left out */
  boxes?: CostBatchRequestBoxe[] | null;
};

/** the reply of cost.batch */
export type CostBatchReply = {
  /** what each part costs */
  parts: CostBatchReplyPart[];
  /** all parts; -1e+30 to 1e+30 */
  total_minor: number;
  /** what of it was wasted; -1e+30 to 1e+30 */
  waste_minor: number;
  /** a good piece; null: there is none; -1e+30 to 1e+30 */
  piece_minor: number | null;
  /** what a box of it costs */
  boxes: CostBatchReplyBoxe[];
  /** what has no price: the total lacks it */
  not_priced: string[];
};

/** the request to cost.price */
export type CostPriceRequest = {
  /** what it costs; 0 to 1e+12 */
  cost_minor: number;
  /** wanted share of the net price, percent; null: not asked; 0 to 99 */
  margin_percent?: number | null;
  /** a price, tax in it; null: not asked; 0 to 1e+12 */
  price_minor?: number | null;
  /** tax in the price, percent; null: none; 0 to 100 */
  tax_percent?: number | null;
};

/** the reply of cost.price */
export type CostPriceReply = {
  /** the price for the margin; null: not asked; -1e+30 to 1e+30 */
  price_minor: number | null;
  /** what the price leaves; null: not asked; -1e+30 to 1e+30 */
  margin_minor: number | null;
  /** of the net price, percent; null: none; -1e+30 to 100 */
  margin_percent: number | null;
};

/** the request to paper.events */
export type PaperEventsRequest = {
  /** corrected time of the newest event the batch has; 0 to 9e+13 ms */
  after_ms: number;
  /** corrected time of typing; 0 to 9e+13 ms */
  now_ms: number;
  /** when all was ready and weighed in; 0 to 9e+13 ms */
  weighed_at_ms?: number | null;
  /** caramel weighed in; 0.05 to 10 kg */
  weighed_kg?: number | null;
  /** old caramel put into the bowl before fresh; null: nothing is said; 0 to 50 kg */
  old_kg?: number | null;
  /** lot of the caramel */
  lot?: string | null;
  /** bursts in their order; [] when left out */
  bursts?: PaperEventsRequestBurst[] | null;
  /** loose pieces that go back to their lot; 0 to 50 kg */
  loose_kg?: number | null;
  /** pieces the plan has; null: any count is believed; 0 to 1e+06 */
  planned_pieces?: number | null;
  /** good pieces counted; 0 to 100000 */
  pieces?: number | null;
  /** trim and other leftovers; 0 to 50 kg */
  rest_kg?: number | null;
  /** who made it, what was seen; [] when left out */
  notes?: string[] | null;
  /** when the slab was poured; 0 to 9e+13 ms */
  poured_at_ms?: number | null;
  /** readings and touch tests in order; [] when left out */
  slab?: Slab[] | null;
  /** when it was cut; 0 to 9e+13 ms */
  cut_at_ms?: number | null;
  /** what the plan of clusters has; null: a slab */
  fill?: Fill | null;
  /** whether nut-free work was finished before nuts came out; false when left out */
  nuts_clear?: boolean | null;
  /** lots of what lies under, as planned; [] when left out */
  under_lots?: PaperEventsRequestUnderLot[] | null;
  /** fills of the funnel in order; [] when left out */
  fills?: PaperEventsRequestFill[] | null;
  /** trays in laying order; [] when left out */
  trays?: PaperEventsRequestTray[] | null;
};

/** the reply of paper.events */
export type PaperEventsReply = {
  /** in the order of the log */
  events: Event[];
};

/** the request to table.batches */
export type TableBatchesRequest = {
  /** summaries, newest first */
  batches: TableBatchesRequestBatch[];
};

/** the reply of table.batches */
export type TableBatchesReply = {
  /** names of the columns */
  columns: string[];
  /** names of the columns that hold seconds since 1970 */
  instants: string[];
  /** a cell for each column; empty: not known */
  rows: string[][];
};

/** the request to table.timeline */
export type TableTimelineRequest = {
  /** events, in any order */
  events: LoggedEvent[];
  /** events that did not fit; [] when left out */
  ignored?: string[] | null;
};

/** the request to lot.fold */
export type LotFoldRequest = {
  /** its id */
  id: string;
  /** events, in any order */
  events: LoggedEvent[];
};

/** the reply of lot.fold */
export type LotFoldReply = {
  /** the document */
  document: Lot;
  /** passed over */
  ignored: Ignored[];
};

/** the request to lot.check */
export type LotCheckRequest = {
  /** what happened */
  kind: string;
  /** what is to be written */
  body: Values;
  /** the shop's currency; "" when left out */
  currency?: string | null;
  /** today, YYYY-MM-DD */
  today: string;
  /** corrected time now; 0 to 1e+14 ms */
  now_ms: number;
  /** its id */
  lot_id: string;
  /** the lots there are; [] when left out */
  lots?: AskedLot[] | null;
  /** what went into batches and boxes; [] when left out */
  uses?: AskedStockUse[] | null;
  /** those of the shop; [] when left out */
  materials?: string[] | null;
};

/** the reply of lot.check */
export type LotCheckReply = {
  /** the same, with what was left out */
  body: Values;
  /** what to mind */
  warnings: Warning[];
};

/** the request to stock.overview */
export type StockOverviewRequest = {
  /** the lots there are */
  lots: AskedLot[];
  /** what went into batches and boxes; [] when left out */
  uses?: AskedStockUse[] | null;
  /** those of the shop; [] when left out */
  materials?: StockOverviewRequestMaterial[] | null;
  /** today, YYYY-MM-DD */
  today: string;
};

/** the reply of stock.overview */
export type StockOverviewReply = {
  /** open ones first, oldest best by first */
  lots: LotLeft[];
  /** those of the shop, then what lots name besides */
  materials: MaterialLeft[];
  /** lots that do not add up: to be counted */
  to_count: string[];
};

/** the request to pack.fold */
export type PackFoldRequest = {
  /** its id */
  id: string;
  /** events, in any order */
  events: LoggedEvent[];
};

/** the reply of pack.fold */
export type PackFoldReply = {
  /** the document */
  document: Pack;
  /** passed over */
  ignored: Ignored[];
};

/** the request to pack.boxes */
export type PackBoxesRequest = {
  /** that which is packed first */
  batches: AskedPieceBatch[];
  /** what was packed; [] when left out */
  packs?: AskedPack[] | null;
  /** those of the shop; [] when left out */
  boxes?: PackBoxesRequestBoxe[] | null;
  /** lots in the order to use them; [] when left out */
  stock?: Stock[] | null;
  /** which box is to be packed; null: none yet */
  box_id?: string | null;
  /** how many of it; null: none yet; 1 to 100000 */
  count?: number | null;
  /** whether they are of pieces that are not good; false when left out */
  seconds?: boolean | null;
};

/** the reply of pack.boxes */
export type PackBoxesReply = {
  /** what is left of each batch */
  left: PiecesLeft[];
  /** what the first batch fills */
  boxes: BoxFilled[];
  /** what the wanted boxes take, by batch; [] when left out */
  from: PackedFrom[];
  /** what they are packed in, by lot; [] when left out */
  lots: PackedLot[];
  /** pieces that the wanted boxes take beyond what is left; 0 to 1e+12 */
  short: number;
};

/** the request to pack.check */
export type PackCheckRequest = {
  /** what happened */
  kind: string;
  /** what is to be written */
  body: Values;
  /** the shop's currency; "" when left out */
  currency?: string | null;
  /** today, YYYY-MM-DD */
  today: string;
  /** corrected time now; 0 to 1e+14 ms */
  now_ms: number;
  /** the boxes; null: new ones */
  pack?: AskedPack | null;
  /** those of the shop; [] when left out */
  boxes?: string[] | null;
  /** net weight that the label declares; null: none; 0.001 to 100 kg */
  label_kg?: number | null;
};

/** the request to order.fold */
export type OrderFoldRequest = {
  /** its id */
  id: string;
  /** events, in any order */
  events: LoggedEvent[];
};

/** the reply of order.fold */
export type OrderFoldReply = {
  /** the document */
  document: Order;
  /** passed over */
  ignored: Ignored[];
};

/** the request to order.check */
export type OrderCheckRequest = {
  /** what happened */
  kind: string;
  /** what is to be written */
  body: Values;
  /** the shop's currency; "" when left out */
  currency?: string | null;
  /** today, YYYY-MM-DD */
  today: string;
  /** corrected time now; 0 to 1e+14 ms */
  now_ms: number;
  /** the midnight with which today began; 0 to 1e+14 ms */
  today_ms: number;
  /** the order; null: a new one */
  order?: AskedOrder | null;
  /** those of the shop; [] when left out */
  boxes?: string[] | null;
  /** those of the shop; [] when left out */
  products?: string[] | null;
};

/** the request to orders.overview */
export type OrdersOverviewRequest = {
  /** orders */
  orders: AskedOrder[];
  /** what was packed; [] when left out */
  packs?: AskedPack[] | null;
  /** corrected time now; 0 to 1e+14 ms */
  now_ms: number;
};

/** the reply of orders.overview */
export type OrdersOverviewReply = {
  /** open ones, those wanted first in front; what stands on the counter last */
  orders: OpenOrder[];
  /** boxes that are wanted or in hand */
  boxes: BoxInHand[];
  /** those in hand, oldest first, and those that do not add up */
  packs: PackInHand[];
  /** orders that do not add up */
  differing: string[];
};

/** body of the event batch_opened */
export type BatchOpenedBody = {
  /** the plan; folded apart from its event */
  plan?: PlanDocument | null;
  /** version that planned it; "" when left out */
  engine_version?: string | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event noted */
export type NotedBody = {
  /** a note */
  text: string;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event photographed */
export type PhotographedBody = {
  /** UUIDv7 of the picture, which the phone sends by itself */
  photo_id: string;
  /** its length as JPEG; 1 to 2.09715e+06 */
  bytes: number;
  /** its width; 1 to 10000 */
  width_px: number;
  /** its height; 1 to 10000 */
  height_px: number;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event taken_over */
export type TakenOverBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event left_out */
export type LeftOutBody = {
  /** whether the shop leaves this batch out of what it learns */
  left_out: boolean;
  /** why; needed to leave out; "" when left out */
  reason?: string | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event step_skipped */
export type StepSkippedBody = {
  /** the step */
  step: string;
  /** of a wash: why it was passed over; null: an older app asked for none */
  reason?: "other_tools" | "covered" | "no_time" | "other" | null;
  /** the same in words; "" when left out */
  text?: string | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event undone */
export type UndoneBody = {
  /** the event taken back */
  event_id: string;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event redone */
export type RedoneBody = {
  /** the event that was taken back and counts again */
  event_id: string;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event renamed */
export type RenamedBody = {
  /** what it is called from now on: another batch had its name */
  name: string;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event closed */
export type ClosedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event pinned */
export type PinnedBody = {
  /** the task of the day */
  task: string;
  /** when it is to begin, corrected; null: whenever it fits; 0 to 1e+14 ms */
  at_ms?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event thrown_away */
export type ThrownAwayBody = {
  /** why */
  reason: "burnt" | "dropped" | "trial" | "unused" | "other";
  /** the same in words; "" when left out */
  text?: string | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event wash_told */
export type WashToldBody = {
  /** whether the bench must be washed before this batch goes on */
  wanted: boolean;
  /** what the bench was used for before; [] when left out */
  after?: (string | null)[] | null;
  /** what is on the bench and not declared by this batch; [] when left out */
  allergens?: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[] | null;
  /** when hands were last at those; null: never; 0 to 1e+14 ms */
  until_ms?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event washed */
export type WashedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event ready_checked */
export type ReadyCheckedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event weighed */
export type WeighedBody = {
  /** caramel weighed in; 0.01 to 50 kg */
  kg: number;
  /** its lot */
  lot?: string | null;
  /** the lots it was taken of; [] when left out */
  lots?: WeighedBodyLot[] | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event old_weighed */
export type OldWeighedBody = {
  /** old caramel put into the bowl before fresh; 0: none; 0 to 50 kg */
  kg: number;
  /** the lots it was taken of; [] when left out */
  lots?: WeighedBodyLot[] | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event lot_named */
export type LotNamedBody = {
  /** lot of the caramel */
  lot: string;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event counted */
export type CountedBody = {
  /** good pieces; 0 to 100000 */
  pieces: number;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event weighed_out */
export type WeighedOutBody = {
  /** what the scale says; 0 to 50 kg */
  kg: number;
  /** what was weighed; "rest" when left out */
  what?: string | null;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event burst_started */
export type BurstStartedBody = {
  /** time set on the oven; 1 to 600 s */
  seconds_s: number;
  /** what the engine advised; 0 to 3600 s */
  advised_s?: number | null;
  /** what follows the burst; "stir" when left out */
  then?: "turn" | "stir" | null;
  /** whether a reading is wanted after it; false when left out */
  read?: boolean | null;
  /** power level on the dial in %; 100 is full power; 1 to 100; 100 when left out */
  level_percent?: number | null;
  /** whether the hottest spot is to be read before the stir; false when left out */
  spot?: boolean | null;
  /** bulk temperature believed before it; -30 to 250 °C */
  from_c?: number | null;
  /** bulk temperature expected after it; -30 to 250 °C */
  expected_c?: number | null;
  /** 10 % point of expected_c; -50 to 250 °C */
  low_c?: number | null;
  /** 90 % point of expected_c; -30 to 300 °C */
  high_c?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: Decided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event burst_ended */
export type BurstEndedBody = {
  /** when the burst it belongs to was started; 0 to 1e+14 ms */
  started_ms?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event spot_read */
export type SpotReadBody = {
  /** the hottest spot, before the stir; 0 to 150 °C */
  surface_c: number;
  /** when the burst it belongs to was started; 0 to 1e+14 ms */
  started_ms?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event stirred */
export type StirredBody = {
  /** whether it stirs freely; false when left out */
  free?: boolean | null;
  /** when the burst it belongs to was started; 0 to 1e+14 ms */
  started_ms?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: StirredBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event read */
export type ReadBody = {
  /** infrared reading; 0 to 150 °C */
  surface_c: number;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: ReadBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event rested */
export type RestedBody = {
  /** time off the heat; 1 to 3600 s */
  seconds_s: number;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event jacket_started */
export type JacketStartedBody = {
  /** expected until it is in the window; 1 to 1e+08 s */
  seconds_s: number;
  /** 10 % point; 1 to 1e+08 s */
  low_s: number;
  /** 90 % point; 1 to 1e+08 s */
  high_s: number;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event water_topped */
export type WaterToppedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event poured */
export type PouredBody = {
  /** bulk temperature believed at pouring; 20 to 150 °C */
  bulk_c?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event slab_read */
export type SlabReadBody = {
  /** infrared reading of the slab; -10 to 150 °C */
  surface_c: number;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event touched */
export type TouchedBody = {
  /** whether the middle felt firm enough to cut */
  firm: boolean;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: TouchedBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event chilled */
export type ChilledBody = {
  /** what was decided then; null: it is when it is folded */
  decided?: ChilledBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event cooling_refitted */
export type CoolingRefittedBody = {
  /** how many readings and touch tests it took in; 0 to 200 */
  seen: number;
  /** of the reply of cool.refit: ready_s, ready_low_s, ready_high_s, loss_factor, loss_factor_sd */
  reply: Refitted;
  /** what was decided then; null: it is when it is folded */
  decided?: CoolingRefittedBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event strip_tested */
export type StripTestedBody = {
  /** whether the strip set with a shine and no streaks */
  good: boolean;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event dipping_started */
export type DippingStartedBody = {
  /** bowls of chocolate then in use; [] when left out */
  bowls?: AskedBowl[] | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event salted */
export type SaltedBody = {
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event dipped */
export type DippedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event set_hard */
export type SetHardBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event wrapped */
export type WrappedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event freed */
export type FreedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event cut */
export type CutBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event prebottomed */
export type PrebottomedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event flipped */
export type FlippedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event scored */
export type ScoredBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event filled */
export type FilledBody = {
  /** caramel in the funnel then; 0.001 to 20 kg */
  kg: number;
  /** its temperature as believed; 20 to 150 °C */
  bulk_c: number;
  /** standard deviation of bulk_c, as believed; null: as usual; 0 to 60 K */
  sd_k?: number | null;
  /** what stays in the bowl, as believed; null: as warm; 20 to 150 °C */
  bowl_c?: number | null;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: FilledBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event fill_read */
export type FillReadBody = {
  /** infrared reading into the funnel; 0 to 150 °C */
  surface_c: number;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: FillReadBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event fill_ended */
export type FillEndedBody = {
  /** what goes back from the funnel into the bowl; 0 to 20 kg; 0.0 when left out */
  left_kg?: number | null;
  /** temperature of the bowl with it, as believed; 20 to 150 °C */
  bulk_c: number;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: FillEndedBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event allergens_checked */
export type AllergensCheckedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event under_lot_named */
export type UnderLotNamedBody = {
  /** what lies under; null: it has no name */
  material?: string | null;
  /** its lot; null: none is known */
  lot?: string | null;
  /** the lots it was taken of; [] when left out */
  lots?: WeighedBodyLot[] | null;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event under_laid */
export type UnderLaidBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event tray_laid */
export type TrayLaidBody = {
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: TrayLaidBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event laying_ended */
export type LayingEndedBody = {
  /** what was decided then; null: it is when it is folded */
  decided?: LayingEndedBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event tack_tested */
export type TackTestedBody = {
  /** whether the first row is tacky */
  tacky: boolean;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: TackTestedBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event second_laid */
export type SecondLaidBody = {
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: SecondLaidBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event funnel_emptied */
export type FunnelEmptiedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event tray_freed */
export type TrayFreedBody = {
  /** whether its clusters come off the paper */
  free: boolean;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: TrayFreedBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event separated */
export type SeparatedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event bowl_burst */
export type BowlBurstBody = {
  /** time set on the oven, at half power; 1 to 600 s */
  seconds_s: number;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event bowl_read */
export type BowlReadBody = {
  /** probe reading of the stirred bowl; 0 to 90 °C */
  bowl_c: number;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: BowlReadBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event seeded */
export type SeededBody = {
  /** seed stirred in; 0 to 50 kg */
  kg: number;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event bowl_warmed */
export type BowlWarmedBody = {
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event bowl_thickened */
export type BowlThickenedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event bowl_used */
export type BowlUsedBody = {
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event leftover_named */
export type LeftoverNamedBody = {
  /** lot the leftover chocolate is kept under */
  lot: string;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event stood */
export type StoodBody = {
  /** height of the cube of a stand-up test; 0.0005 to 0.3 m */
  height_m: number;
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** what was decided then; null: it is when it is folded */
  decided?: StoodBodyDecided | null;
  /** when somebody typed it back from paper; ms */
  typed_at_ms?: number;
  /** the person at the phone, of the shop's people */
  by?: string;
};

/** body of the event shop_set */
export type ShopSetBody = {
  /** shop, or <list>/<id> */
  doc: string;
  /** the field, a dotted path inside the row */
  field: string;
  /** its value; null takes it back */
  value: unknown;
  /** what it rests on */
  basis: "typed" | "measured" | "published" | "assumed";
};

/** body of the event received */
export type ReceivedBody = {
  /** what it is: caramels/<id>, chocolates/<id> or materials/<id> */
  material: string;
  /** unit of its amounts; "kg" when left out */
  unit?: "kg" | "each" | null;
  /** an id, or null */
  supplier_id?: string | null;
  /** the supplier as it was typed; "" when left out */
  supplier?: string | null;
  /** the supplier's lot; "" when left out */
  supplier_lot?: string | null;
  /** how many packs; 1 to 100000; 1 when left out */
  packs?: number | null;
  /** how much is in a pack; 1e-06 to 100000 */
  pack_amount: number;
  /** what all packs cost; null: nobody knows; 0 to 1e+12 */
  price_minor?: number | null;
  /** ISO 4217 code of its currency; empty: that of the shop; "" when left out */
  currency?: string | null;
  /** best by; null: nobody knows */
  best_by?: string | null;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event made */
export type MadeBody = {
  /** what it is: caramels/<id>, chocolates/<id> or materials/<id> */
  material: string;
  /** unit of its amounts; "kg" when left out */
  unit?: "kg" | "each" | null;
  /** the batch it was left of */
  batch_id?: string | null;
  /** how much, in the lot's unit; 1e-06 to 100000 */
  amount: number;
  /** how often it has been melted; 0 to 50; 0 when left out */
  remelts?: number | null;
  /** best by; null: nobody knows */
  best_by?: string | null;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event opened */
export type OpenedBody = {
  /** the person at the phone */
  by?: string | null;
};

/** body of the event left_counted */
export type LeftCountedBody = {
  /** how much, in the lot's unit; 0 to 100000 */
  left: number;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event discarded */
export type DiscardedBody = {
  /** how much, in the lot's unit; 1e-06 to 100000 */
  amount: number;
  /** why; "other" when left out */
  why?: "spoilt" | "past_best_by" | "damaged" | "dropped" | "recalled" | "other" | null;
  /** the same in words; "" when left out */
  text?: string | null;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event merged */
export type MergedBody = {
  /** the lot it now belongs to */
  into_lot_id: string;
  /** whether it is poured together; false: one delivery, written down twice; true when left out */
  adds?: boolean | null;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event placed */
export type PlacedBody = {
  /** a customer of the shop; null: only a name */
  customer_id?: string | null;
  /** the customer's name; "" when left out */
  customer?: string | null;
  /** when it is wanted; 0 to 1e+14 ms */
  wanted_ms: number;
  /** what is wanted */
  lines: AskedOrderLine[];
  /** agreed price of all; null: by the list; 0 to 1e+12 */
  price_minor?: number | null;
  /** ISO 4217 code of its currency; empty: that of the shop; "" when left out */
  currency?: string | null;
  /** a note; "" when left out */
  note?: string | null;
  /** wanted again every week; null: once */
  repeats?: "week" | null;
  /** whether it is stock for the shop's own counter; false when left out */
  counter?: boolean | null;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event changed */
export type ChangedBody = {
  /** a customer of the shop; null: only a name */
  customer_id?: string | null;
  /** the customer's name */
  customer?: string | null;
  /** when it is wanted; 0 to 1e+14 ms */
  wanted_ms?: number | null;
  /** what is wanted */
  lines?: AskedOrderLine[] | null;
  /** agreed price of all; null: by the list; 0 to 1e+12 */
  price_minor?: number | null;
  /** ISO 4217 code of its currency; empty: that of the shop */
  currency?: string | null;
  /** a note */
  note?: string | null;
  /** wanted again every week; null: once */
  repeats?: "week" | null;
  /** whether it is stock for the shop's own counter */
  counter?: boolean | null;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event cancelled */
export type CancelledBody = {
  /** why; "" when left out */
  why?: string | null;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event handed_over */
export type HandedOverBody = {
  /** what was handed over */
  lines: HandedOverBodyLine[];
  /** how many of its kind had been counted when it was tapped; 0 to 100000 */
  seen?: number | null;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event packed */
export type PackedBody = {
  /** which box of the shop */
  box_id: string;
  /** the batches its pieces are of; [] when left out */
  from?: AskedPackedFrom[] | null;
  /** boxes, cups, labels by lots; [] when left out */
  lots?: AskedPackedLot[] | null;
  /** the lot code on the label; "" when left out */
  code?: string | null;
  /** a day, YYYY-MM-DD */
  made_on?: string | null;
  /** a day, YYYY-MM-DD */
  best_by?: string | null;
  /** whether they are sold as seconds; false when left out */
  seconds?: boolean | null;
  /** how many boxes; 1 to 100000 */
  count: number;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event net_weighed */
export type NetWeighedBody = {
  /** net weight of one box; 0 to 100 kg */
  net_kg: number;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event labels_printed */
export type LabelsPrintedBody = {
  /** how many labels; 1 to 100000 */
  n: number;
  /** the person at the phone */
  by?: string | null;
};

/** body of the event unpacked */
export type UnpackedBody = {
  /** how many boxes were taken back; 1 to 100000 */
  count: number;
  /** why; "" when left out */
  why?: string | null;
  /** the person at the phone */
  by?: string | null;
};

/** mass fractions that sum to 1 ± 0.02 */
export type MaterialByWater = {
  /** mass fraction of water; 0 to 1 */
  water: number;
  /** mass fraction of protein; 0 to 1; 0.0 when left out */
  protein?: number | null;
  /** mass fraction of fat; 0 to 1; 0.0 when left out */
  fat?: number | null;
  /** mass fraction of carbohydrate without fibre; 0 to 1; 0.0 when left out */
  carbohydrate?: number | null;
  /** mass fraction of fibre; 0 to 1; 0.0 when left out */
  fibre?: number | null;
  /** mass fraction of ash; 0 to 1; 0.0 when left out */
  ash?: number | null;
  /** weighed density; null: from the composition; 300 to 3000 kg/m³ */
  density_kg_m3?: number | null;
};

/** constant thermal properties */
export type MaterialByConductivity = {
  /** thermal conductivity; 0.005 to 500 W/(m K) */
  conductivity_w_mk: number;
  /** density; 1 to 20000 kg/m³ */
  density_kg_m3: number;
  /** specific heat; 100 to 10000 J/(kg K) */
  heat_capacity_j_kgk: number;
};

/** the microwave oven */
export type Oven = {
  /** power on the rating plate; 200 to 3500 W */
  rated_w?: number | null;
  /** power that this mass absorbs, as measured; 100 to 3500 W */
  power_w?: number | null;
  /** standard deviation of power_w; 1 to 1500 W */
  power_sd_w?: number | null;
  /** melts: power_w was measured in melts, its spread has that of caramel and bowl in it */
  measured_in?: string | null;
  /** whether it turns the bowl; true when left out */
  turntable?: boolean | null;
  /** hottest rise over mean rise in one burst; null: by turntable; 1 to 4 */
  unevenness?: number | null;
  /** standard deviation of unevenness; null: none; 0 to 2 */
  unevenness_sd?: number | null;
  /** power levels its dial offers; none: full power alone; [] when left out */
  levels_percent?: number[] | null;
};

/** the bowl or jug; null: an ordinary one nobody weighed */
export type Vessel = {
  /** mass of the empty vessel; 0.01 to 20 kg */
  mass_kg: number;
  /** specific heat of the vessel; 300 to 3000 J/(kg K); 800.0 when left out */
  heat_capacity_j_kgk?: number | null;
};

/** one burst */
export type Burst = {
  /** length of the burst; 1 to 300 s */
  seconds_s: number;
  /** power level on the dial in %; 100 is full power; 1 to 100; 100 when left out */
  level_percent: number;
  /** bulk temperature expected after it and a stir; -1e+06 to 1e+06 °C */
  expected_c: number;
  /** 10 % point of expected_c; -1e+06 to 1e+06 °C */
  low_c: number;
  /** 90 % point of expected_c; -1e+06 to 1e+06 °C */
  high_c: number;
  /** hottest spot before the stir, 95 % point; 98 % until a reading is due; -1e+06 to 1e+06 °C */
  hottest_c: number;
};

/** one happening */
export type History = {
  /** what happened */
  kind: "burst" | "spot" | "stir" | "reading" | "rest";
  /** length of the burst or rest; 0 to 36000 s */
  seconds_s?: number | null;
  /** power level on the dial in %; 100 is full power; 1 to 100; 100 when left out */
  level_percent?: number | null;
  /** whether it stirs freely */
  free?: boolean | null;
  /** infrared reading, or the hottest spot before the stir; 0 to 150 °C */
  surface_c?: number | null;
};

/** the block, whole */
export type Block = {
  /** length; 0.01 to 1 m */
  length_m: number;
  /** width; 0.01 to 1 m */
  width_m: number;
  /** height; 0.01 to 1 m */
  height_m: number;
};

/** one frame that fits */
export type Frame = {
  /** centres across the width; 1 to 5000 */
  rows: number;
  /** centres along the length; 1 to 5000 */
  columns: number;
  /** whether the centre's length lies across the frame */
  rotated: boolean;
  /** frame length; 0 to 5 m */
  length_m: number;
  /** frame width; 0 to 5 m */
  width_m: number;
  /** centres it gives; 1 to 1e+06 */
  pieces: number;
  /** share of the area that is trim, cut loss or centres beyond those wanted; 0 to 1 */
  waste: number;
};

/** how the top gives off heat */
export type TopByH = {
  /** heat-transfer coefficient, radiation included; 0 to 500 W/(m² K) */
  h_w_m2k: number;
};

/** a base of one's own */
export type BaseByLayers = {
  /** layers from the slab downwards */
  layers: Layer[];
  /** base area over slab area; 1 to 20; 1.0 when left out */
  area_ratio?: number | null;
};

/** one layer of the base */
export type Layer = {
  /** thickness of the layer; 0.0001 to 0.2 m */
  thickness_m: number;
  /** thermal conductivity; 0.005 to 500 W/(m K) */
  conductivity_w_mk: number;
  /** density; 1 to 20000 kg/m³ */
  density_kg_m3: number;
  /** specific heat; 100 to 10000 J/(kg K) */
  heat_capacity_j_kgk: number;
};

/** how the underside gives off heat */
export type BottomByH = {
  /** heat-transfer coefficient, radiation included; 0 to 500 W/(m² K) */
  h_w_m2k: number;
};

/** the chill that makes it ready; null: the room does */
export type Chill = {
  /** time after pouring until the bench brings nothing more; 0 to 1e+08 s */
  bench_s: number;
  /** hottest point when it goes into the refrigerator; -5 to 50 °C */
  from_c: number;
  /** air of the refrigerator; 0 to 15 °C */
  fridge_c: number;
  /** time in the refrigerator until it can be cut; 0 to 1e+06 s */
  seconds_s: number;
  /** 10 % point; 0 to 1e+06 s */
  low_s: number;
  /** 90 % point; 0 to 1e+06 s */
  high_s: number;
  /** its top when it comes out; -10 to 50 °C */
  surface_c: number;
  /** time after pouring from which it may go in sooner: firm; 0 to 1e+08 s */
  sooner_at_s: number | null;
  /** time in the refrigerator then; null: it is not firm before bench_s; 0 to 1e+06 s */
  sooner_s: number | null;
};

/** one milestone */
export type Milestone = {
  /** what the slab can do then */
  name: "skin" | "tacky" | "firm" | "free" | "ready" | "cold";
  /** time after pouring; 0 to 1e+08 s */
  at_s: number;
  /** 10 % point; 0 to 1e+08 s */
  low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  high_s: number;
};

/** one point */
export type Curve = {
  /** time after pouring; 0 to 1e+08 s */
  at_s: number;
  /** hottest point; -31 to 151 °C */
  core_c: number;
  /** top surface; -31 to 151 °C */
  surface_c: number;
};

/** one reading */
export type Reading = {
  /** time after pouring; 0 to 1e+06 s */
  at_s: number;
  /** infrared reading of the top; -10 to 150 °C */
  surface_c: number;
};

/** one touch test */
export type RefitRequestTouch = {
  /** time after pouring; 0 to 1e+06 s */
  at_s: number;
  /** whether the middle felt firm enough to cut */
  firm: boolean;
};

/** one undipped centre; null: a cluster, coated by pick-up */
export type Piece = {
  /** length; 0.002 to 0.3 m */
  length_m: number;
  /** width; 0.002 to 0.3 m */
  width_m: number;
  /** height; 0.002 to 0.3 m */
  height_m: number;
};

/** thickness of the coating; null: that of the method */
export type ThicknessM = {
  /** below; 0 to 0.01 m */
  bottom: number;
  /** on each side; 0 to 0.01 m */
  side: number;
  /** above; 0 to 0.01 m */
  top: number;
};

/** inside of the box's pocket; null: not compared */
export type PocketM = {
  /** length; 0.002 to 0.5 m */
  length_m: number;
  /** width; 0.002 to 0.5 m */
  width_m: number;
  /** height; 0.002 to 0.5 m */
  height_m: number;
};

/** the finished piece; null when its size is not known */
export type OutsideM = {
  /** length; 0.002 to 100000 m */
  length_m: number;
  /** width; 0.002 to 100000 m */
  width_m: number;
  /** height; 0.002 to 100000 m */
  height_m: number;
};

/** heat lines of the shop's own chocolate, from its label; null: those of its kind */
export type Targets = {
  /** coolest melt that leaves no old crystals; 35 to 60 °C */
  melt_low_c: number;
  /** hottest melt it bears; 35 to 60 °C */
  melt_high_c: number;
  /** lower end of cooling after the seed; 15 to 35 °C */
  cool_low_c: number;
  /** upper end of cooling after the seed; 15 to 35 °C */
  cool_high_c: number;
  /** lower end of the working range; 20 to 38 °C */
  work_low_c: number;
  /** upper end of the working range; 20 to 38 °C */
  work_high_c: number;
};

/** one step */
export type Step = {
  /** the step */
  name: "melt" | "seed" | "cool" | "work";
  /** lower end of its range; 0 to 100 °C */
  low_c: number;
  /** upper end; 0 to 100 °C */
  high_c: number;
};

/** what will be an event */
export type Fact = {
  /** what happened */
  kind: string;
  /** when, corrected; 0 to 1e+14 ms */
  at_ms: number;
  /** its body */
  body: Values;
};

/** one of today's batches */
export type Batch = {
  /** the batch */
  id: string;
  /** its kind; a stand-up test is left alone and takes no part */
  kind: "slab" | "cluster" | "chocolate" | "standup";
  /** what people call it; "" when left out */
  name?: string | null;
  /** allergens on the labels of its caramel and chocolate; [] when left out */
  contains?: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[] | null;
  /** whether somebody copied all of these labels; true when left out */
  labels_known?: boolean | null;
  /** what lies under its caramel; [] when left out */
  under?: ("dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel")[] | null;
  /** whether it takes chocolate from a bowl: dipped, or coated below; false when left out */
  coated?: boolean | null;
  /** how far it is */
  state: "planned" | "open" | "closed";
  /** whether a clock of it rings now or within minutes: taken first; false when left out */
  soon?: boolean | null;
  /** whether caramel or chocolate of it is hot: taken next, without a wash; false when left out */
  hot?: boolean | null;
  /** since when it is in this state; null: never; 0 to 1e+14 ms */
  since_ms?: number | null;
  /** when hands were last at it; null: never; 0 to 1e+14 ms */
  touched_ms?: number | null;
  /** when tools, surfaces and hands were last washed for it; null: never; 0 to 1e+14 ms */
  washed_ms?: number | null;
  /** when a wash for it was last done, or passed over; null: never; 0 to 1e+14 ms */
  answered_ms?: number | null;
};

/** a batch that is planned or open */
export type BatchOrderReplyOrder = {
  /** the batch */
  id: string;
  /** all it holds; [] when left out */
  allergens: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** those of which something would be left */
  after: string[];
  /** what to wash off before it; empty: no wash; [] when left out */
  wash: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
};

/** a batch that is open */
export type Now = {
  /** the batch */
  id: string;
  /** those of which something is left */
  after: After[];
  /** what to wash off if hands go to it now; empty: no wash; [] when left out */
  wash: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** when hands were last at those; null: never; 0 to 1e+14 ms */
  until_ms: number | null;
};

/** a batch the bench was used for */
export type After = {
  /** the batch */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** allergens; [] when left out */
  allergens: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
};

/** caramel by weight */
export type Have = {
  /** caramel in hand; 0.05 to 50 kg */
  kg: number;
};

/** good centres, or boxes and centres a box */
export type Want = {
  /** good centres; 1 to 5000 */
  pieces?: number | null;
  /** boxes; 1 to 1000 */
  boxes?: number | null;
  /** good centres in a box; 1 to 500 */
  per_box?: number | null;
};

/** a frame in hand */
export type FrameByLength = {
  /** frame length; 0.02 to 5 m */
  length_m: number;
  /** frame width; 0.02 to 5 m */
  width_m: number;
};

/** bars alike */
export type Bar = {
  /** height of the bar; 0.002 to 0.1 m */
  height_m: number;
  /** length of the bar; null: unknown; 0.05 to 5 m */
  length_m?: number | null;
  /** how many there are; four of one height close a frame; 1 to 200; 4 when left out */
  count?: number | null;
};

/** melt in a water jacket instead of an oven; null: in the oven */
export type Jacket = {
  /** the jacket's water; 40 to 140 °C */
  water_c: number;
  /** shortest side of the block, the others equal; null: a cube; 0.01 to 0.3 m */
  thickness_m?: number | null;
  /** size of the pieces it was chopped into; null: whole; 0.005 to 0.6 m */
  chopped_m?: number | null;
};

/** the heat lines of this caramel */
export type Windows = {
  /** coolest bulk temperature to pour at; 30 to 120 °C; 71.0 when left out */
  low_c?: number | null;
  /** hottest bulk temperature to pour at; 30 to 120 °C; 77.0 when left out */
  high_c?: number | null;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c?: number | null;
  /** bulk temperature from which it darkens; 40 to 140 °C; 82.0 when left out */
  warn_c?: number | null;
  /** bulk temperature at which heating stops; 40 to 140 °C; 85.0 when left out */
  stop_c?: number | null;
};

/** trim and leftovers to melt again; null: none */
export type Old = {
  /** its weight, for all batches of the plan; null: by its share; 0 to 50 kg */
  kg?: number | null;
  /** its share of the caramel weighed in; null: by its weight; 0 to 1 */
  share?: number | null;
  /** times it was melted again already; trim of fresh caramel: 0; 0 to 10; 0 when left out */
  remelts?: number | null;
};

/** dip the pieces in chocolate; null: they stay plain */
export type Dip = {
  /** weighed: chocolate taken up over the undipped weight; 0.01 to 5 */
  pickup?: number | null;
  /** thickness of the coating; null: that of the method */
  thickness_m?: ThicknessM | null;
  /** how the pieces are coated; "fork" when left out */
  method?: "fork" | "enrober" | "enrober_with_bottomer" | null;
  /** thickness of the pre-bottom; 0: none; 0 to 0.005 m; 0.0 when left out */
  prebottom_m?: number | null;
  /** the kind of chocolate; "dark_chocolate" when left out */
  chocolate?: "dark_chocolate" | "milk_chocolate" | "white_chocolate" | null;
  /** inside of the box's pocket; null: not compared */
  pocket_m?: PocketM | null;
  /** chocolate that must stay in the bowl for the last piece to be dipped; 0 to 20 kg; 0.3 when left out */
  bowl_reserve_kg?: number | null;
  /** inside width of the bowl that the pieces are dipped in; null: its depth is not counted; 0.05 to 1 m */
  bowl_width_m?: number | null;
  /** what drips off or runs into a foot, over the coating; 0 to 0.5; 0.05 when left out */
  drip_share?: number | null;
  /** time until a dipped piece takes no more salt; 10 to 3600 s; 120.0 when left out */
  set_s?: number | null;
  /** salt on one piece; null: not weighed; 1e-05 to 0.002 kg */
  salt_each_kg?: number | null;
  /** time from one piece to the next; 0.5 to 600 s; 20.0 when left out */
  dip_s?: number | null;
  /** the salt that goes on top */
  salt?: string | null;
  /** whether each piece gets a mark on top; false when left out */
  top_mark?: boolean | null;
};

/** old caramel in it, and how often what is left over has been melted again */
export type Remelt = {
  /** old caramel to weigh in; 0 to 50 kg */
  old_kg: number;
  /** fresh caramel to weigh in beside it; 0 to 50 kg */
  fresh_kg: number;
  /** times that the oldest of it will have been melted again after this batch; 0 to 11 */
  n: number;
  /** times that its label allows; null: not known; 0 to 10 */
  allowed_n: number | null;
};

/** the cut centre that waits longest until it is dipped; null: nothing is known of the caramel's water */
export type Square = {
  /** share of its height that it loses; 0 to 1 */
  lost_fraction: number;
  /** how long it waits; 0 to 1e+08 s */
  seconds_s: number;
  /** warmest room in which it loses no more than 5 %; -300 to 200 °C */
  warmest_c: number;
};

/** dew point of the room and what its air does, as room.advise */
export type Room = {
  /** temperature of a surface that just begins to sweat; -100 to 60 °C */
  dew_point_c: number | null;
  /** what to mind */
  warnings: Warning[];
};

/** batches alike */
export type SlabPlanReplyBatch = {
  /** caramel to weigh in; 0 to 50000 kg */
  caramel_kg: number;
  /** pieces to make; 0 to 1e+06 */
  pieces: number;
  /** pieces of them that are likely to be good; 0 to 1e+06 */
  good: number;
  /** batches alike; 1 to 100 */
  count: number;
  /** frame length; 0 to 5 m */
  length_m: number;
  /** frame width; 0 to 5 m */
  width_m: number;
  /** what its own request has in place of that of all */
  asked: Asked;
};

/** what its own request has in place of that of all */
export type Asked = {
  /** caramel by weight */
  have?: Have | null;
  /** good centres, or boxes and centres a box */
  want?: Want | null;
  /** a frame in hand, or find one; "fit" when left out */
  frame?: "fit" | FrameByLength | null;
  /** longest frame; 0.02 to 5 m; 0.6 when left out */
  max_length_m?: number | null;
  /** widest frame; 0.02 to 5 m; 0.4 when left out */
  max_width_m?: number | null;
  /** trim and leftovers to melt again; null: none */
  old?: Old | null;
};

/** all batches together */
export type Together = {
  /** caramel to weigh in; 0 to 50000 kg */
  caramel_kg: number;
  /** pieces to make; 0 to 1e+06 */
  pieces: number;
  /** pieces of them that are likely to be good; 0 to 1e+06 */
  good: number;
  /** batches; 1 to 100 */
  batches: number;
  /** blocks to open for all; 0 to 100000 */
  blocks: number;
  /** left of the last block; without block_kg, of the caramel in hand; 0 to 1000 kg */
  leftover_kg: number;
};

/** as cut.plan */
export type Cut = {
  /** centres across the width; 1 to 5000 */
  rows: number;
  /** centres along the length; 1 to 5000 */
  columns: number;
  /** centres; 1 to 1e+06 */
  pieces: number;
  /** whether the centre's length lies across the frame */
  rotated: boolean;
  /** cuts that run along the length, from the long edge */
  cuts_along_m: number[];
  /** cuts that run across, from the short edge */
  cuts_across_m: number[];
  /** mass of one centre; 0 to 200 kg */
  piece_kg: number;
  /** mass of trim and cut loss; 0 to 50000 kg */
  trim_kg: number;
};

/** chocolate, outside size and salting as chocolate.coating and chocolate.salting; null: not dipped */
export type SlabPlanReplyDip = {
  /** coating of one piece, without its pre-bottom; 0 to 10000 kg */
  per_piece_kg: number;
  /** share of chocolate, pre-bottom included, in the finished piece; 0 to 1 */
  share: number;
  /** weight of a finished piece; 0 to 100000 kg */
  piece_kg: number;
  /** chocolate for the pre-bottom; 0 to 100000 kg */
  prebottom_kg: number;
  /** chocolate on all pieces, without the pre-bottom; 0 to 1e+09 kg */
  coating_kg: number;
  /** chocolate that drips off or runs into a foot; 0 to 1e+09 kg */
  drip_kg: number;
  /** how deep the last piece is dipped; null: width or size not known; 0 to 1 m */
  depth_m: number | null;
  /** chocolate that stays in the bowl: the reserve, or what is so deep; 0 to 10000 kg */
  reserve_kg: number;
  /** chocolate to have: coating, pre-bottom, drips, reserve; 0 to 1e+09 kg */
  total_kg: number;
  /** the finished piece; null when its size is not known */
  outside_m: OutsideM | null;
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
  /** how the pieces are coated; "fork" when left out */
  method: "fork" | "enrober" | "enrober_with_bottomer";
  /** time from one piece to the next; 0.5 to 600 s; 20.0 when left out */
  dip_s: number;
  /** salt on one piece; null: not weighed; 1e-05 to 0.002 kg */
  salt_each_kg: number | null;
  /** the salt that goes on top */
  salt: string | null;
  /** whether each piece gets a mark on top; false when left out */
  top_mark: boolean;
  /** pieces to dip before the first of them is marked or salted; 1 to 10000 */
  every: number;
  /** salt for all; null: none goes on; 0 to 200 kg */
  salt_kg: number | null;
  /** time to dip and salt all; 0 to 1e+09 s */
  dip_all_s: number;
  /** time the full bowl stays in its working range; null: it does not cool; 0 to 1e+08 s */
  holds_s: number | null;
  /** times the bowl is warmed until all are dipped; 0 to 1e+08 */
  rewarms: number;
};

/** one kind of piece */
export type Under = {
  /** what lies under the caramel: a built-in material, a composition or constants */
  material: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity;
  /** weight of one; 5e-05 to 0.2 kg */
  kg_each: number;
  /** how many go under each cluster; 1 to 100; 1 when left out */
  count?: number | null;
};

/** a level bed inside the rim of the tray, as far as rows are laid; null: none */
export type Bed = {
  /** what the bed is mixed from; the shares sum to 1 ± 0.02 */
  materials: BedMaterial[];
  /** weight of the bed over its area; 0.05 to 50 kg/m² */
  bed_kg_m2: number;
};

/** one kind in the mix */
export type BedMaterial = {
  /** what lies under the caramel: a built-in material, a composition or constants */
  material: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity;
  /** its share of the bed's weight; 0.001 to 1 */
  share: number;
};

/** clusters of one size */
export type Row = {
  /** clusters of this size; 1 to 20000 */
  clusters: number;
  /** one first deposit; 0.0005 to 0.5 kg */
  deposit_kg: number;
};

/** the tray */
export type Tray = {
  /** length inside; 0.03 to 0.8 m */
  length_m: number;
  /** width inside; 0.03 to 0.8 m */
  width_m: number;
  /** kept free along every edge; 0 to 0.2 m; 0.01 when left out */
  rim_m?: number | null;
};

/** the funnel */
export type Funnel = {
  /** brimful; 0.0002 to 0.01 m³ */
  volume_m3: number;
  /** share that is filled; 0.25 to 1; 0.75 when left out */
  fill?: number | null;
  /** heat the fill loses through wall and open top; 1 to 60 W/(m² K); 10.0 when left out */
  h_w_m2k?: number | null;
};

/** batches alike */
export type ClusterPlanReplyBatch = {
  /** caramel to weigh in; 0 to 50000 kg */
  caramel_kg: number;
  /** pieces to make; 0 to 1e+06 */
  pieces: number;
  /** pieces of them that are likely to be good; 0 to 1e+06 */
  good: number;
  /** batches alike; 1 to 100 */
  count: number;
  /** what its own request has in place of that of all */
  asked: ClusterPlanReplyBatchAsked;
};

/** what its own request has in place of that of all */
export type ClusterPlanReplyBatchAsked = {
  /** clusters wanted, in laying order; sizes may differ; empty: as many as caramel_kg gives; [] when left out */
  rows?: Row[] | null;
  /** caramel in hand; null: as rows want; 0.05 to 50 kg */
  caramel_kg?: number | null;
  /** trim and leftovers to melt again; null: none */
  old?: Old | null;
};

/** one size */
export type Size = {
  /** clusters of this size; 1 to 100000 */
  clusters: number;
  /** one first deposit; 0 to 0.5 kg */
  deposit_kg: number;
  /** across it once it lies; 0 to 0.2 m */
  spread_m: number;
};

/** trays that hold the same */
export type ByTray = {
  /** trays; 1 to 20000 */
  trays: number;
  /** clusters of each size, in laying order */
  sizes: Size[];
};

/** one kind */
export type ClusterPlanReplyUnder = {
  /** as asked */
  material: Material;
  /** weight to have ready; 0 to 1e+06 kg */
  kg: number;
  /** pieces to have ready; null: a bed, weighed; 0 to 1e+07 */
  count: number | null;
  /** its allergen, by its name; null: none known */
  allergen: "milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin" | null;
};

/** mass fractions that sum to 1 ± 0.02 */
export type FullMaterialByWater = {
  /** mass fraction of water; 0 to 1 */
  water: number;
  /** mass fraction of protein; 0 to 1; 0.0 when left out */
  protein: number;
  /** mass fraction of fat; 0 to 1; 0.0 when left out */
  fat: number;
  /** mass fraction of carbohydrate without fibre; 0 to 1; 0.0 when left out */
  carbohydrate: number;
  /** mass fraction of fibre; 0 to 1; 0.0 when left out */
  fibre: number;
  /** mass fraction of ash; 0 to 1; 0.0 when left out */
  ash: number;
  /** weighed density; null: from the composition; 300 to 3000 kg/m³ */
  density_kg_m3: number | null;
};

/** constant thermal properties */
export type FullMaterialByConductivity = {
  /** thermal conductivity; 0.005 to 500 W/(m K) */
  conductivity_w_mk: number;
  /** density; 1 to 20000 kg/m³ */
  density_kg_m3: number;
  /** specific heat; 100 to 10000 J/(kg K) */
  heat_capacity_j_kgk: number;
};

/** what a bed weighs as far as rows are laid; null: counted out */
export type ClusterPlanReplyBed = {
  /** on a tray; 0 to 40 kg */
  tray_kg: number;
  /** on the last tray; 0 to 40 kg */
  last_kg: number;
};

/** when a second deposit may go on, after the first was laid; null: none is planned */
export type Second = {
  /** from when it is tacky; 0 to 1e+08 s */
  from_s: number;
  /** from when it is too cold to weld; 0 to 1e+08 s */
  to_s: number;
};

/** when the tray can be freed, after its last deposit was laid */
export type Free = {
  /** when it is most likely free from tray and paper; 0 to 1e+08 s */
  from_s: number;
  /** 90 % point; 0 to 1e+08 s */
  to_s: number;
};

/** the chill of a tray that is not free by free.from_s; null: the room frees it */
export type ClusterPlanReplyChill = {
  /** hottest point when the tray goes into the refrigerator; -5 to 50 °C */
  from_c: number;
  /** air of the refrigerator; 0 to 15 °C */
  fridge_c: number;
  /** time there until it can be freed; 0 to 1e+06 s */
  seconds_s: number;
};

/** time it stays in its working range, from the upper end of it */
export type Hold = {
  /** time until it leaves the working range; 0 when it is outside; 0 to 1e+08 s */
  seconds_s: number;
  /** 10 % point; 0 to 1e+08 s */
  low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  high_s: number;
};

/** one measurement */
export type Height = {
  /** time since the cube was set down; 0 to 3e+06 s */
  at_s: number;
  /** its height then; 0.0005 to 0.3 m */
  height_m: number;
};

/** an oven at a mass */
export type MeasuredOven = {
  /** its id in the shop document */
  id: string;
  /** masses it was measured with */
  mass_band: MassBand;
  /** mass that power_w is for; 0.05 to 10 kg */
  mass_kg: number;
  /** power that this mass takes up; 100 to 3500 W */
  power_w: number;
  /** its standard deviation for the next batch; 1 to 1500 W */
  power_sd_w: number;
  /** 10 % point of the next batch; 1 to 5000 W */
  power_low_w: number;
  /** 90 % point of the next batch; 1 to 20000 W */
  power_high_w: number;
  /** hottest rise over mean rise in one burst; null: not read yet; 1 to 4 */
  unevenness: number | null;
  /** its standard deviation for the next batch; 0 to 2 */
  unevenness_sd: number | null;
  /** batches it rests on; 1 to 100000 */
  n: number;
};

/** masses it was measured with */
export type MassBand = {
  /** from this mass; 0 to 20 kg */
  low_kg: number;
  /** up to this mass; 0 to 20 kg */
  high_kg: number;
};

/** a base */
export type MeasuredBase = {
  /** its id in the shop document */
  id: string;
  /** heat loss over that of the model; 0.2 to 5 */
  loss_factor: number;
  /** standard deviation of its logarithm for the next batch; 0.01 to 1 */
  loss_factor_sd: number;
  /** spread of start, room and contact over what is assumed; 0.05 to 5 */
  spread: number;
  /** batches it rests on; 1 to 100000 */
  n: number;
};

/** a product */
export type Product = {
  /** its id in the shop document */
  id: string;
  /** good centres over those planned; 0 while n is 0; 0 to 1 */
  yield: number;
  /** its standard deviation for the next batch; 0 to 1 */
  yield_sd: number;
  /** 10 % point of the next batch; 0 to 1 */
  yield_low: number;
  /** 90 % point of the next batch; 0 to 1 */
  yield_high: number;
  /** batches it rests on; 0 to 100000 */
  n: number;
  /** trim weighed; null: never */
  trim: Trim | null;
  /** chocolate taken up over the undipped weight; null: never weighed */
  pickup: Pickup | null;
};

/** trim weighed; null: never */
export type Trim = {
  /** of the caramel weighed in; 0 to 1 */
  share: number;
  /** its standard deviation for the next batch; 0 to 1 */
  share_sd: number;
  /** 10 % point of the next batch; 0 to 1 */
  share_low: number;
  /** 90 % point of the next batch; 0 to 1 */
  share_high: number;
  /** batches it rests on; 1 to 100000 */
  n: number;
};

/** chocolate taken up over the undipped weight; null: never weighed */
export type Pickup = {
  /** of the caramel weighed in; 0 to 5 */
  share: number;
  /** its standard deviation for the next batch; 0 to 5 */
  share_sd: number;
  /** 10 % point of the next batch; 0 to 5 */
  share_low: number;
  /** 90 % point of the next batch; 0 to 5 */
  share_high: number;
  /** batches it rests on; 1 to 100000 */
  n: number;
};

/** a caramel */
export type Caramel = {
  /** its id in the shop document */
  id: string;
  /** hottest point of a slab when this shop cuts it; 15 to 45 °C */
  ready_c: number;
  /** 10 % point of the next batch; 0 to 60 °C */
  low_c: number;
  /** 90 % point of the next batch; 0 to 60 °C */
  high_c: number;
  /** batches it rests on; 1 to 100000 */
  n: number;
};

/** something not taken in */
export type MeasuredIgnored = {
  /** the batch; null: it has no id */
  batch_id: string | null;
  /** oven, base, pieces, trim or residue; null: all of it */
  part: string | null;
  /** a problem's code */
  why: string;
};

/** one value */
export type Used = {
  /** dotted path in the request */
  field: string;
  /** the measured value; 0 to 1e+06 */
  value: number;
  /** batches it rests on; 1 to 100000 */
  n: number;
};

/** a day */
export type Day = {
  /** its name */
  weekday: "monday" | "tuesday" | "wednesday" | "thursday" | "friday" | "saturday" | "sunday";
  /** its beginning; 0 to 1e+14 ms */
  midnight_ms: number;
};

/** a batch */
export type ScheduleTasksRequestBatch = {
  /** its plan */
  plan: PlanDocument;
  /** its state */
  run: Run;
  /** its id */
  id: string;
};

/** an open order */
export type ScheduleTasksRequestOrder = {
  /** its id */
  order_id: string;
  /** when it is wanted; null: any time; 0 to 1e+14 ms */
  wanted_ms?: number | null;
  /** what is missing */
  lines: Line[];
};

/** a line */
export type Line = {
  /** the box; null: single pieces or loose */
  box_id?: string | null;
  /** the product; null: boxes */
  product_id?: string | null;
  /** how many are still to be packed; 0 to 1e+12 */
  missing: number;
};

/** a batch */
export type Closed = {
  /** its plan */
  plan: PlanDocument;
  /** its state */
  run: Run;
};

/** for schedule.plan */
export type ScheduleTasksReplyDay = {
  /** the tasks */
  tasks: Task[];
  /** the jobs */
  jobs: Job[];
  /** ovens, bars, table, trays, bowls; [] when left out */
  resources: Resource[];
  /** how many people; 0 to 20; 1 when left out */
  people: number;
  /** when people work; none: round the clock; [] when left out */
  hours: Hour[];
  /** a wash of tools, surfaces and hands; 0 to 7200 s; 900.0 when left out */
  wash_s: number;
  /** nothing starts before; null: the start, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  now_s: number | null;
};

/** a task: hands on it, then a wait */
export type Task = {
  /** its id */
  id: string;
  /** the job it is of */
  job: string;
  /** time with hands on it; 0 to 1.2096e+06 s */
  hands_s: number;
  /** time after that which needs nobody; null: none; 0 to 1.2096e+06 s */
  wait_s: number | null;
  /** how many people it takes while hands are on it; 0 to 20; 1 when left out */
  people: number;
  /** things; [] when left out */
  uses: string[];
  /** things that it takes from its start until a task is over; [] when left out */
  keeps: Keep[];
  /** what it waits for; [] when left out */
  after: TaskAfter[];
  /** not before, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  earliest_s: number | null;
  /** where somebody pinned it, from the start of the first day; 0 to 1.2096e+06 s */
  pinned_s: number | null;
  /** when it began, of one that has, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  begun_s: number | null;
};

/** a thing */
export type Keep = {
  /** the thing */
  name: string;
  /** the task; null: this one */
  until: string | null;
};

/** a task it waits for */
export type TaskAfter = {
  /** the task before it */
  task: string;
  /** how long after its end at least; null: at once; 0 to 1.2096e+06 s */
  least_s: number | null;
  /** how long after at most; null: any time; 0 to 1.2096e+06 s */
  most_s: number | null;
};

/** a job: a batch, or the boxes of an order */
export type Job = {
  /** its id */
  id: string;
  /** when it must be done; null: any time, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  due_s: number | null;
  /** its allergens; null: it does not share the bench */
  contains: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[] | null;
};

/** a kind of thing */
export type Resource = {
  /** its name */
  name: string;
  /** how many there are; 1 to 50 */
  count: number;
};

/** a span at work */
export type Hour = {
  /** from, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  from_s: number;
  /** to, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  to_s: number;
};

/** what a task is */
export type ScheduleTasksReplyRow = {
  /** its id */
  id: string;
  /** the batch it is of; null: it is of an order */
  batch_id: string | null;
  /** the order it is of; null: it is of a batch */
  order_id: string | null;
  /** what is done */
  name: string;
  /** whether it has begun */
  begun: boolean;
  /** whether somebody pinned it */
  pinned: boolean;
};

/** a task: hands on it, then a wait */
export type AskedTask = {
  /** its id */
  id: string;
  /** the job it is of */
  job: string;
  /** time with hands on it; 0 to 1.2096e+06 s */
  hands_s: number;
  /** time after that which needs nobody; null: none; 0 to 1.2096e+06 s */
  wait_s?: number | null;
  /** how many people it takes while hands are on it; 0 to 20; 1 when left out */
  people?: number | null;
  /** things; [] when left out */
  uses?: string[] | null;
  /** things that it takes from its start until a task is over; [] when left out */
  keeps?: AskedKeep[] | null;
  /** what it waits for; [] when left out */
  after?: AskedTaskAfter[] | null;
  /** not before, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  earliest_s?: number | null;
  /** where somebody pinned it, from the start of the first day; 0 to 1.2096e+06 s */
  pinned_s?: number | null;
  /** when it began, of one that has, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  begun_s?: number | null;
};

/** a thing */
export type AskedKeep = {
  /** the thing */
  name: string;
  /** the task; null: this one */
  until?: string | null;
};

/** a task it waits for */
export type AskedTaskAfter = {
  /** the task before it */
  task: string;
  /** how long after its end at least; null: at once; 0 to 1.2096e+06 s */
  least_s?: number | null;
  /** how long after at most; null: any time; 0 to 1.2096e+06 s */
  most_s?: number | null;
};

/** a job: a batch, or the boxes of an order */
export type AskedJob = {
  /** its id */
  id: string;
  /** when it must be done; null: any time, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  due_s?: number | null;
  /** its allergens; null: it does not share the bench */
  contains?: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[] | null;
};

/** a kind of thing */
export type AskedResource = {
  /** its name */
  name: string;
  /** how many there are; 1 to 50 */
  count: number;
};

/** a span at work */
export type AskedHour = {
  /** from, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  from_s: number;
  /** to, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  to_s: number;
};

/** a task that has its place */
export type SchedulePlanReplyTask = {
  /** its id */
  id: string;
  /** its start, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  start_s: number;
  /** when hands are free again, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  hands_end_s: number;
  /** its end, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  end_s: number;
  /** who and what it takes */
  takes: Take[];
  /** start of the wash before it; null: none, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  wash_s: number | null;
};

/** one */
export type Take = {
  /** people or a thing */
  name: string;
  /** which one; 1 to 50 */
  unit: number;
};

/** a job */
export type SchedulePlanReplyJob = {
  /** its id */
  id: string;
  /** when it is done, from the start of the first day; -1.2096e+06 to 1.2096e+06 s */
  end_s: number;
  /** how much too late; 0 to 1e+09 s */
  late_s: number;
  /** how much too early; null: no hour is set; 0 to 1e+09 s */
  spare_s: number | null;
};

/** one */
export type Conflict = {
  /** its id */
  task: string;
  /** what is not free, or the task it would have to wait for */
  wants: string;
};

/** what one more would do */
export type Help = {
  /** people, or a thing */
  name: string;
  /** how many would be late; 0 to 100 */
  late_jobs: number;
  /** how late in all; 0 to 1e+09 s */
  late_s: number;
};

/** a part */
export type Part = {
  /** its name */
  name: string;
  /** ingredients as its label lists them; "" when left out */
  ingredients?: string | null;
  /** allergens on its label; null: nobody copied them */
  contains?: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[] | null;
  /** how much went in; 0 to 100000 kg */
  kg: number;
};

/** an allergen's words */
export type Word = {
  /** an allergen */
  allergen: "milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin";
  /** words for it */
  words: string[];
};

/** so much of the list */
export type Ingredient = {
  /** so much of the list */
  text: string;
  /** whether it names an allergen and stands out */
  is_strong: boolean;
};

/** one */
export type LabelContentReplyWarning = {
  /** key of the sentence */
  code: string;
  /** what is in it */
  values: Values;
};

/** by nutrient */
export type Amounts = {
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  energy_kcal?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  fat?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  saturated_fat?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  trans_fat?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  cholesterol_mg?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  sodium_mg?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  carbohydrate?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  fibre?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  sugars?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  added_sugars?: number | null;
  /** amount in its own unit; null: not known; 0 to 1e+06 */
  protein?: number | null;
};

/** one */
export type LabelBestByRequestPart = {
  /** its name */
  name: string;
  /** its day; null: none */
  best_by?: string | null;
};

/** a link */
export type Link = {
  /** what went in */
  from: string;
  /** what came of it */
  to: string;
};

/** a lot */
export type AskedLot = {
  /** its id */
  id: string;
  /** what it is: caramels/<id>, chocolates/<id> or materials/<id>; "" when left out */
  material?: string | null;
  /** unit of its amounts; "kg" when left out */
  unit?: "kg" | "each" | null;
  /** the batch it was left of */
  made_from?: string | null;
  /** an id, or null */
  supplier_id?: string | null;
  /** the supplier as it was typed; "" when left out */
  supplier?: string | null;
  /** the supplier's lot; "" when left out */
  supplier_lot?: string | null;
  /** how many packs; 0 to 100000; 0 when left out */
  packs?: number | null;
  /** how much was got in all; 0 to 1e+10 */
  amount: number;
  /** what all of it cost; null: nobody knows; 0 to 1e+12 */
  price_minor?: number | null;
  /** ISO 4217 code of its currency; empty: that of the shop; "" when left out */
  currency?: string | null;
  /** best by; null: nobody knows */
  best_by?: string | null;
  /** when it came; null: nobody has written it down; -1e+15 to 1e+15 ms */
  received_ms?: number | null;
  /** when it was opened; -1e+15 to 1e+15 ms */
  opened_ms?: number | null;
  /** how often it has been melted; 0 to 50; 0 when left out */
  remelts?: number | null;
  /** counts; [] when left out */
  counts?: Count[] | null;
  /** what was thrown away; [] when left out */
  discarded?: Discarded[] | null;
  /** photo of its label */
  photo_id?: string | null;
  /** the lot it now belongs to */
  merged_into?: string | null;
  /** since when; -1e+15 to 1e+15 ms */
  merged_ms?: number | null;
  /** whether its amount went there; false: it was one delivery, written down twice; true when left out */
  adds?: boolean | null;
};

/** a count */
export type Count = {
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** how much, in the lot's unit; 0 to 100000 */
  left: number;
};

/** what was thrown away */
export type Discarded = {
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** how much, in the lot's unit; 0 to 100000 */
  amount: number;
  /** why */
  why: "spoilt" | "past_best_by" | "damaged" | "dropped" | "recalled" | "other";
  /** the same in words */
  text: string;
};

/** a batch */
export type TraceWalkRequestBatch = {
  /** the batch */
  batch_id: string;
  /** whether it is a bowl of chocolate; false when left out */
  is_bowl?: boolean | null;
  /** a lot as it was typed; null: none */
  lot?: string | null;
  /** lots that were taken from stock for it; [] when left out */
  used_lots?: string[] | null;
  /** lots of the chocolate it was dipped in; [] when left out */
  dipped_lots?: (string | null)[] | null;
  /** lots of what lies under its caramel; [] when left out */
  under_lots?: (string | null)[] | null;
  /** a lot as it was typed; null: none */
  leftover_lot?: string | null;
};

/** boxes packed */
export type AskedPack = {
  /** its id */
  id: string;
  /** which box of the shop; null: nothing was packed */
  box_id?: string | null;
  /** the batches its pieces are of; [] when left out */
  from?: AskedPackedFrom[] | null;
  /** boxes, cups, labels by lots; [] when left out */
  lots?: AskedPackedLot[] | null;
  /** the lot code on the label; "" when left out */
  code?: string | null;
  /** a day, YYYY-MM-DD */
  made_on?: string | null;
  /** a day, YYYY-MM-DD */
  best_by?: string | null;
  /** whether they are sold as seconds; false when left out */
  seconds?: boolean | null;
  /** how many boxes were packed; 0 to 100000; 0 when left out */
  packed?: number | null;
  /** how many of them are still boxes; below zero: a difference; -1e+10 to 100000; 0 when left out */
  count?: number | null;
  /** weighed; [] when left out */
  net_kg?: number[] | null;
  /** how many labels were printed; 0 to 1e+10; 0 when left out */
  printed?: number | null;
  /** when they were packed; -1e+15 to 1e+15 ms */
  at_ms?: number | null;
};

/** a batch */
export type AskedPackedFrom = {
  /** its id */
  batch_id: string;
  /** how many pieces; 1 to 100000 */
  pieces: number;
};

/** a lot */
export type AskedPackedLot = {
  /** its id */
  lot_id: string;
  /** how much, in the lot's unit; 1e-06 to 100000 */
  amount: number;
};

/** an order */
export type AskedOrder = {
  /** its id */
  id: string;
  /** a customer of the shop; null: only a name */
  customer_id?: string | null;
  /** the customer's name; "" when left out */
  customer?: string | null;
  /** when it is wanted; -1e+15 to 1e+15 ms */
  wanted_ms?: number | null;
  /** what is wanted; [] when left out */
  lines?: AskedOrderLine[] | null;
  /** agreed price of all; null: by the list; 0 to 1e+12 */
  price_minor?: number | null;
  /** ISO 4217 code of its currency; empty: that of the shop; "" when left out */
  currency?: string | null;
  /** a note; "" when left out */
  note?: string | null;
  /** wanted again every week; null: once */
  repeats?: "week" | null;
  /** whether it is stock for the shop's own counter; false when left out */
  counter?: boolean | null;
  /** when it was placed; null: not known yet; -1e+15 to 1e+15 ms */
  placed_ms?: number | null;
  /** when and why; null: it stands */
  cancelled?: Cancelled | null;
  /** what was handed over; [] when left out */
  handed?: Handed[] | null;
  /** how often; 0 to 20000; 0 when left out */
  handovers?: number | null;
  /** how far it is; "open" when left out */
  state?: "open" | "part" | "handed" | "cancelled" | null;
  /** what does not add up; [] when left out */
  differences?: AskedOrderDifference[] | null;
};

/** so many boxes, pieces, or so much of a product */
export type AskedOrderLine = {
  /** a box of the shop; null: single pieces or loose */
  box_id?: string | null;
  /** a product of the shop; null: boxes */
  product_id?: string | null;
  /** how many; 1 to 100000 */
  count?: number | null;
  /** loose by weight; null: by count; 0.001 to 10000 kg */
  mass_kg?: number | null;
};

/** when and why; null: it stands */
export type Cancelled = {
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** why */
  why: string;
};

/** what was handed over */
export type Handed = {
  /** a box of the shop; null: single pieces or loose */
  box_id?: string | null;
  /** a product of the shop; null: boxes */
  product_id?: string | null;
  /** how many; 1 to 100000 */
  count?: number | null;
  /** loose by weight; null: by count; 0.001 to 10000 kg */
  mass_kg?: number | null;
  /** packed as; null: nobody wrote that down */
  pack_id?: string | null;
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** the person at the phone */
  by?: string | null;
  /** the event that said so */
  event_id: string;
  /** of the hand-overs written down; 0 to 20000 */
  nth: number;
};

/** what does not add up */
export type AskedOrderDifference = {
  /** what does not add up */
  code: "handed_twice" | "handed_more" | "handed_though_cancelled";
  /** what may be taken back */
  event_id?: string | null;
};

/** a link */
export type FullLink = {
  /** what went in */
  from: string;
  /** what came of it */
  to: string;
};

/** an open order */
export type NeedsGatherRequestOrder = {
  /** an id */
  order_id: string;
  /** when it is wanted; null: any time; 0 to 1e+14 ms */
  wanted_ms?: number | null;
  /** what is missing */
  lines: NeedsGatherRequestOrderLine[];
};

/** a line */
export type NeedsGatherRequestOrderLine = {
  /** the box; null: single pieces or loose */
  box_id?: string | null;
  /** the product; null: boxes */
  product_id?: string | null;
  /** boxes or pieces still to be packed; 0 to 1e+06 */
  missing: number;
  /** loose by weight: how much is missing; null: by count; 0 to 10000 kg */
  mass_kg?: number | null;
};

/** a lot */
export type NeedsGatherRequestLot = {
  /** an id */
  lot_id: string;
  /** an id */
  material: string;
  /** how much is left; -1e+09 to 1e+09 */
  left: number;
  /** whether its day is over; false when left out */
  is_past?: boolean | null;
};

/** a batch */
export type NeedsGatherRequestBatch = {
  /** an id */
  id: string;
  /** its plan */
  plan: PlanDocument;
  /** its state */
  run: Run;
};

/** an open order */
export type FullNeedsGatherRequestOrder = {
  /** an id */
  order_id: string;
  /** when it is wanted; null: any time; 0 to 1e+14 ms */
  wanted_ms: number | null;
  /** what is missing */
  lines: FullNeedsGatherRequestOrderLine[];
};

/** a line */
export type FullNeedsGatherRequestOrderLine = {
  /** the box; null: single pieces or loose */
  box_id: string | null;
  /** the product; null: boxes */
  product_id: string | null;
  /** boxes or pieces still to be packed; 0 to 1e+06 */
  missing: number;
  /** loose by weight: how much is missing; null: by count; 0 to 10000 kg */
  mass_kg: number | null;
};

/** a box */
export type Boxe = {
  /** an id */
  box_id: string;
  /** what is in it */
  contents: Content[];
  /** what it is packed in; [] when left out */
  packaging: Packaging[];
};

/** a product in it */
export type Content = {
  /** an id */
  product_id: string;
  /** pieces; 1 to 10000 */
  count: number;
};

/** so much of a material */
export type Packaging = {
  /** an id */
  material: string;
  /** how much, in the material's unit; 0 to 1e+09 */
  amount: number;
};

/** a product */
export type NeedsGatherReplyProduct = {
  /** an id */
  product_id: string;
  /** a finished piece; 0.0005 to 5 kg */
  piece_kg: number;
  /** share of pieces that turn out good, as measured; null: all; 0.05 to 1 */
  yield_share: number | null;
  /** good pieces that are in no box; null: none; 0 to 1e+06 */
  in_hand: number | null;
  /** the most that one batch makes; 1 to 1e+06 */
  batch_pieces: number;
  /** pieces of one block; null: unknown; 1 to 1e+06 */
  block_pieces: number | null;
  /** what goes into a piece; [] when left out */
  per_piece: Packaging[];
};

/** a lot */
export type FullNeedsGatherRequestLot = {
  /** an id */
  lot_id: string;
  /** an id */
  material: string;
  /** how much is left; -1e+09 to 1e+09 */
  left: number;
  /** whether its day is over; false when left out */
  is_past: boolean;
};

/** a box */
export type AskedBoxe = {
  /** an id */
  box_id: string;
  /** what is in it */
  contents: AskedContent[];
  /** what it is packed in; [] when left out */
  packaging?: AskedPackaging[] | null;
};

/** a product in it */
export type AskedContent = {
  /** an id */
  product_id: string;
  /** pieces; 1 to 10000 */
  count: number;
};

/** so much of a material */
export type AskedPackaging = {
  /** an id */
  material: string;
  /** how much, in the material's unit; 0 to 1e+09 */
  amount: number;
};

/** a product */
export type AskedNeedsGatherReplyProduct = {
  /** an id */
  product_id: string;
  /** a finished piece; 0.0005 to 5 kg */
  piece_kg: number;
  /** share of pieces that turn out good, as measured; null: all; 0.05 to 1 */
  yield_share?: number | null;
  /** good pieces that are in no box; null: none; 0 to 1e+06 */
  in_hand?: number | null;
  /** the most that one batch makes; 1 to 1e+06 */
  batch_pieces: number;
  /** pieces of one block; null: unknown; 1 to 1e+06 */
  block_pieces?: number | null;
  /** what goes into a piece; [] when left out */
  per_piece?: AskedPackaging[] | null;
};

/** a product */
export type NeedsPlanReplyProduct = {
  /** an id */
  product_id: string;
  /** good pieces that are missing; 0 to 1e+12 */
  wanted: number;
  /** pieces to make for them; 0 to 1e+14 */
  make: number;
  /** when the first are wanted; null: any time; 0 to 1e+14 ms */
  by_ms: number | null;
  /** for which orders */
  order_ids: string[];
  /** batches */
  batches: NeedsPlanReplyProductBatch[];
};

/** a batch */
export type NeedsPlanReplyProductBatch = {
  /** pieces; 1 to 1e+06 */
  pieces: number;
};

/** a material */
export type NeedsPlanReplyMaterial = {
  /** an id */
  material: string;
  /** how much; 0 to 1e+20 */
  wanted: number;
  /** from which lots */
  from: From[];
  /** how much is to be bought; 0 to 1e+20 */
  short: number;
  /** when the first that is short is wanted; null; 0 to 1e+14 ms */
  by_ms: number | null;
};

/** of a lot */
export type From = {
  /** an id */
  lot_id: string;
  /** how much, in the material's unit; 0 to 1e+09 */
  amount: number;
};

/** gone */
export type Unknown = {
  /** an id */
  order_id: string;
  /** an id */
  id: string;
};

/** something that went in */
export type Use = {
  /** its name */
  name: string;
  /** how much of the lot went in, kg or pieces; 0 to 1e+06 */
  amount: number;
  /** how much of it was bought, kg or pieces; 1e-06 to 1e+06 */
  lot_amount: number;
  /** what all of it cost; null: not known; 0 to 1e+12 */
  lot_price_minor?: number | null;
};

/** a box */
export type CostBatchRequestBoxe = {
  /** its name */
  name: string;
  /** pieces in a box; 0 to 100000 */
  pieces: number;
  /** box, cups and label; null: none; 0 to 1e+12 */
  packaging_minor?: number | null;
};

/** a part */
export type CostBatchReplyPart = {
  /** its name */
  name: string;
  /** minor units; -1e+30 to 1e+30 */
  minor: number;
};

/** a box */
export type CostBatchReplyBoxe = {
  /** its name */
  name: string;
  /** minor units; -1e+30 to 1e+30 */
  minor: number | null;
};

/** a burst */
export type PaperEventsRequestBurst = {
  /** when it was started; 0 to 9e+13 ms */
  at_ms: number;
  /** time set on the oven; 1 to 600 s */
  seconds_s: number;
  /** power level on the dial in %; 100 is full power; 1 to 100; 100 when left out */
  level_percent?: number | null;
  /** whether it stirred freely after it; false when left out */
  free?: boolean | null;
  /** infrared reading after the stir; 0 to 150 °C */
  surface_c?: number | null;
};

/** a look at the slab */
export type Slab = {
  /** when it was read or pressed; 0 to 9e+13 ms */
  at_ms: number;
  /** infrared reading of the slab; -10 to 150 °C */
  surface_c?: number | null;
  /** whether the middle felt firm enough to cut */
  firm?: boolean | null;
};

/** what the plan of clusters has; null: a slab */
export type Fill = {
  /** one fill of the funnel; 0.001 to 20 kg */
  fill_kg: number;
  /** coolest that the bowl is ready at; 20 to 150 °C */
  low_c: number;
};

/** a lot */
export type PaperEventsRequestUnderLot = {
  /** what lies under; null: it has no name */
  material?: string | null;
  /** its lot; null: none is known */
  lot?: string | null;
};

/** a fill */
export type PaperEventsRequestFill = {
  /** when the funnel was filled; 0 to 9e+13 ms */
  at_ms: number;
  /** infrared reading into it; 0 to 150 °C */
  surface_c?: number | null;
};

/** a tray */
export type PaperEventsRequestTray = {
  /** when it was laid; 0 to 9e+13 ms */
  laid_at_ms?: number | null;
  /** when it had its second deposit; 0 to 9e+13 ms */
  second_at_ms?: number | null;
  /** when it came off its paper; 0 to 9e+13 ms */
  freed_at_ms?: number | null;
};

/** an event */
export type Event = {
  /** what happened */
  kind: string;
  /** when, corrected; 0 to 1e+14 ms */
  at_ms: number;
  /** its body, with `typed_at_ms` */
  body: Values;
};

/** a batch */
export type TableBatchesRequestBatch = {
  /** the batch */
  batch_id: string;
  /** its name; "" when left out */
  name?: string | null;
  /** slab; "" when left out */
  kind?: string | null;
  /** opened; -2e+14 to 2e+14 ms */
  opened_at_ms: number;
  /** closed, or null; -2e+14 to 2e+14 ms */
  closed_at_ms?: number | null;
  /** the open step */
  step?: string | null;
  /** counted, else planned; 0 to 1e+09 */
  pieces?: number | null;
  /** weighed in, else planned; kg */
  caramel_kg?: number | null;
  /** pieces counted by planned mass of one; null before the count; kg */
  good_kg?: number | null;
  /** the phone that opened it; "" when left out */
  device_id?: string | null;
  /** how many events it has; 0 to 1e+09; 0 when left out */
  events?: number | null;
  /** what its label says; null: an older app made the line */
  label?: Label | null;
};

/** what its label says; null: an older app made the line */
export type Label = {
  /** lot of the caramel or chocolate */
  lot?: string | null;
  /** lots of what lies under; [] when left out */
  under_lots?: LabelUnderLot[] | null;
  /** what it took of lots in stock; [] when left out */
  uses?: LabelUse[] | null;
  /** allergens of all it is made of; [] when left out */
  contains?: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[] | null;
  /** whether all of these labels were copied; false when left out */
  labels_known?: boolean | null;
  /** what was not washed off before it; [] when left out */
  may_contain?: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[] | null;
  /** why nothing of it is sold; null: it is not thrown away */
  thrown_away?: "burnt" | "dropped" | "trial" | "unused" | "other" | null;
};

/** one */
export type LabelUnderLot = {
  /** its name; null: unnamed */
  material?: string | null;
  /** its lot */
  lot: string;
};

/** a use */
export type LabelUse = {
  /** its id */
  lot_id: string;
  /** how much, in the lot's unit; 0 to 100000 */
  amount: number;
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
};

/** a use */
export type AskedStockUse = {
  /** its id */
  lot_id: string;
  /** how much, in the lot's unit; 0 to 100000 */
  amount: number;
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** the batch it went into; null: boxes */
  batch_id?: string | null;
};

/** a material */
export type StockOverviewRequestMaterial = {
  /** what it is: caramels/<id>, chocolates/<id> or materials/<id> */
  material: string;
  /** unit of its amounts; "kg" when left out */
  unit?: "kg" | "each" | null;
  /** to be bought below this; null: never; 0 to 100000 */
  lowest?: number | null;
};

/** a counted batch */
export type AskedPieceBatch = {
  /** its id */
  batch_id: string;
  /** what it is of; null: it was planned for no product */
  product_id?: string | null;
  /** good pieces counted; 0 to 100000 */
  good: number;
};

/** a box */
export type PackBoxesRequestBoxe = {
  /** its id */
  box_id: string;
  /** what is in it; [] when left out */
  lines?: PackBoxesRequestBoxeLine[] | null;
  /** box, cups, lid, label of one; [] when left out */
  packaging?: PackBoxesRequestBoxePackaging[] | null;
};

/** so many of a product */
export type PackBoxesRequestBoxeLine = {
  /** its id */
  product_id: string;
  /** how many of it; 1 to 1000 */
  count: number;
};

/** so much of a material */
export type PackBoxesRequestBoxePackaging = {
  /** what it is: caramels/<id>, chocolates/<id> or materials/<id> */
  material: string;
  /** how much of it; 0 to 1000 */
  amount: number;
};

/** a lot */
export type Stock = {
  /** its id */
  lot_id: string;
  /** what it is: caramels/<id>, chocolates/<id> or materials/<id> */
  material: string;
  /** what is left of it, in its unit; -1e+12 to 1e+12 */
  left: number;
};

/** the microwave oven */
export type FullOven = {
  /** power on the rating plate; 200 to 3500 W */
  rated_w: number | null;
  /** power that this mass absorbs, as measured; 100 to 3500 W */
  power_w: number | null;
  /** standard deviation of power_w; 1 to 1500 W */
  power_sd_w: number | null;
  /** melts: power_w was measured in melts, its spread has that of caramel and bowl in it */
  measured_in: string | null;
  /** whether it turns the bowl; true when left out */
  turntable: boolean;
  /** hottest rise over mean rise in one burst; null: by turntable; 1 to 4 */
  unevenness: number | null;
  /** standard deviation of unevenness; null: none; 0 to 2 */
  unevenness_sd: number | null;
  /** power levels its dial offers; none: full power alone; [] when left out */
  levels_percent: number[];
};

/** the bowl or jug; null: an ordinary one nobody weighed */
export type FullVessel = {
  /** mass of the empty vessel; 0.01 to 20 kg */
  mass_kg: number;
  /** specific heat of the vessel; 300 to 3000 J/(kg K); 800.0 when left out */
  heat_capacity_j_kgk: number;
};

/** how the top gives off heat */
export type FullTopByH = {
  /** heat-transfer coefficient, radiation included; 0 to 500 W/(m² K) */
  h_w_m2k: number;
};

/** a base of one's own */
export type FullBaseByLayers = {
  /** layers from the slab downwards */
  layers: FullLayer[];
  /** base area over slab area; 1 to 20; 1.0 when left out */
  area_ratio: number;
};

/** one layer of the base */
export type FullLayer = {
  /** thickness of the layer; 0.0001 to 0.2 m */
  thickness_m: number;
  /** thermal conductivity; 0.005 to 500 W/(m K) */
  conductivity_w_mk: number;
  /** density; 1 to 20000 kg/m³ */
  density_kg_m3: number;
  /** specific heat; 100 to 10000 J/(kg K) */
  heat_capacity_j_kgk: number;
};

/** how the underside gives off heat */
export type FullBottomByH = {
  /** heat-transfer coefficient, radiation included; 0 to 500 W/(m² K) */
  h_w_m2k: number;
};

/** a bowl */
export type Bowl = {
  /** what its plan is called */
  name: string;
  /** lot of its chocolate */
  lot: string | null;
};

/** of the reply of slab.plan */
export type SlabPlanTakenReply = {
  /** caramel to weigh in; 0 to 50 kg */
  caramel_kg: number;
  /** as melt.plan_jacket; null in an oven */
  jacket?: MeltPlanJacketReply | null;
  /** chocolate, outside size and salting as chocolate.coating and chocolate.salting; null: not dipped */
  dip?: SlabPlanReplyDip | null;
  /** dew point of the room and what its air does, as room.advise */
  room?: Room;
  /** the request to melt.plan, for melt.next_burst at the bench; in a jacket what is needed of it */
  melt_request: MeltRequest;
  /** the request to cool.plan, for cool.refit at the bench */
  cool_request: CoolRequest;
  /** what to mind */
  warnings?: Warning[];
  /** old caramel in it, and how often what is left over has been melted again */
  remelt?: Remelt;
  /** as cut.plan */
  cut: SlabPlanTakenReplyCut;
  /** as pour.plan */
  pour: Pour;
  /** as cool.plan */
  cool: Cool;
};

/** as cut.plan */
export type SlabPlanTakenReplyCut = {
  /** centres; 1 to 1e+06 */
  pieces: number;
  /** mass of one centre; 0 to 200 kg */
  piece_kg: number;
};

/** as pour.plan */
export type Pour = {
  /** frame length; 0 to 5 m */
  length_m: number;
  /** frame width; 0 to 5 m */
  width_m: number;
  /** their total height; 0 to 0.2 m */
  bar_height_m: number;
};

/** as cool.plan */
export type Cool = {
  /** time after pouring until it can be cut; 0 to 1e+08 s */
  ready_s: number;
  /** 10 % point; 0 to 1e+08 s */
  ready_low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  ready_high_s: number;
  /** the chill that makes it ready; null: the room does */
  chill?: Chill | null;
};

/** what was planned */
export type SlabRunPlanned = {
  /** caramel or chocolate to weigh in; kg */
  caramel_kg: number | null;
  /** pieces; null where nobody counts; 0 to 1e+09 */
  pieces: number | null;
  /** one of them; kg */
  piece_kg: number | null;
  /** frame length; 0 to 5 m */
  length_m: number;
  /** frame width; 0 to 5 m */
  width_m: number;
  /** their total height; 0 to 0.2 m */
  bar_height_m: number;
};

/** of the reply of cluster.plan */
export type ClusterPlanTakenReply = {
  /** old caramel in it, and how often what is left over has been melted again */
  remelt?: Remelt;
  /** how the deposits lie */
  pattern: "square" | "staggered_long" | "staggered_short";
  /** deposits on a full tray; 1 to 10000 */
  per_tray: number;
  /** trays; 1 to 20000 */
  trays: number;
  /** clusters; 1 to 100000 */
  clusters: number;
  /** clusters of each size, in laying order */
  sizes?: Size[];
  /** what lies on which trays, in laying order; empty: all deposits are alike */
  by_tray?: ByTray[];
  /** one second deposit; 0: none; 0 to 0.5 kg */
  second_kg?: number;
  /** all deposits together; 0 to 20 kg */
  deposits_kg: number;
  /** caramel to weigh in; 0 to 20 kg */
  caramel_kg: number;
  /** one finished cluster, what lies under it included; the mean; 0 to 10000 kg */
  piece_kg: number;
  /** what goes under */
  under: ClusterPlanReplyUnder[];
  /** what a bed weighs as far as rows are laid; null: counted out */
  bed?: ClusterPlanReplyBed | null;
  /** deposits that a fill gives before it is empty; 1 to 100000 */
  deposits_per_fill: number;
  /** one fill; 0 to 50 kg */
  fill_kg: number;
  /** time until a fill, emptying at the pace, leaves its window or is empty; 0 to 1e+08 s */
  fill_s: number;
  /** what the funnel takes where that is all there is; 0 to 50 kg */
  most_fill_kg: number;
  /** time a fresh fill stays warm enough as it empties, on the safe side; sooner empty: as if just so slowly; 0 to 1e+08 s */
  safe_s?: number;
  /** time a fresh fill that stands stays warm enough, on the safe side; 0 to 1e+08 s */
  stands_s: number;
  /** fills; 1 to 100000 */
  fills: number;
  /** times the caramel has to be warmed again; 0 to 100000 */
  reheats: number;
  /** what no fill is sure to lay: too cool by then, and too little to heat again; 0 to 20 kg */
  rest_kg: number;
  /** time from the first fill to the last deposit, reheating and waiting included, a quarter slower; 0 to 1e+08 s */
  laying_s: number;
  /** the same from the first burst on; 0 to 1e+08 s */
  bench_s: number;
  /** time to lay a full tray; 0 to 1e+08 s */
  tray_s: number;
  /** when a second deposit may go on, after the first was laid; null: none is planned */
  second: Second | null;
  /** when the tray can be freed, after its last deposit was laid */
  free: Free;
  /** the chill of a tray that is not free by free.from_s; null: the room frees it */
  chill: ClusterPlanReplyChill | null;
  /** the request to melt.plan, for melt.next_burst at the bench */
  melt_request: MeltRequest;
  /** the request to deposit.fill without now_c and fill_kg, for the bench */
  fill_request: FillRequest;
  /** blocks to open; 0 to 1000 */
  blocks: number;
  /** left of the last block; without block_kg, of the caramel in hand; 0 to 50 kg */
  leftover_kg: number;
  /** chocolate, outside size and salting as chocolate.coating and chocolate.salting; null: not dipped */
  dip?: SlabPlanReplyDip | null;
  /** what to mind */
  warnings?: Warning[];
  /** dew point of the room and what its air does, as room.advise */
  room?: Room;
};

/** what was planned */
export type ClusterRunPlanned = {
  /** caramel or chocolate to weigh in; kg */
  caramel_kg: number | null;
  /** pieces; null where nobody counts; 0 to 1e+09 */
  pieces: number | null;
  /** one of them; kg */
  piece_kg: number | null;
  /** deposits on a full tray; 1 to 10000 */
  per_tray: number;
  /** trays; 1 to 20000 */
  trays: number;
  /** what goes under all of them; kg */
  under_kg: number;
  /** whether that is a bed */
  bed: boolean;
  /** what a bed weighs as far as rows are laid; null: counted out */
  bed_kg?: ClusterPlanReplyBed | null;
  /** what lies under */
  under?: LiesUnder[];
};

/** of the reply of chocolate.plan */
export type ChocolatePlanTakenReply = {
  /** chocolate to melt; 0 to 100 kg */
  melt_kg: number;
  /** seed, finely cut; 0 to 100 kg */
  seed_kg: number;
  /** what the bench reckons with: the request, its defaults filled in */
  bowl_request: BowlRequest;
  /** melt, stir the seed in, cool, work */
  steps: Step[];
  /** what to mind */
  warnings?: Warning[];
};

/** what was planned */
export type ChocolateRunPlanned = {
  /** caramel or chocolate to weigh in; kg */
  caramel_kg: number | null;
  /** pieces; null where nobody counts; 0 to 1e+09 */
  pieces: number | null;
  /** one of them; kg */
  piece_kg: number | null;
  /** seed to have ready; kg */
  seed_kg: number;
};

/** its heat lines */
export type FullTargets = {
  /** coolest melt that leaves no old crystals; 35 to 60 °C */
  melt_low_c: number;
  /** hottest melt it bears; 35 to 60 °C */
  melt_high_c: number;
  /** lower end of cooling after the seed; 15 to 35 °C */
  cool_low_c: number;
  /** upper end of cooling after the seed; 15 to 35 °C */
  cool_high_c: number;
  /** lower end of the working range; 20 to 38 °C */
  work_low_c: number;
  /** upper end of the working range; 20 to 38 °C */
  work_high_c: number;
};

/** where it stands */
export type StandupPlanRequest = {
  /** room temperature; °C */
  room_c: number;
};

/** the same: nothing of it is computed beforehand */
export type StandupPlanReply = {
  /** room temperature; °C */
  room_c: number;
  /** every input that went into the answer */
  inputs: Input[];
};

/** what was planned */
export type StandupRunPlanned = {
  /** caramel or chocolate to weigh in; kg */
  caramel_kg: number | null;
  /** pieces; null where nobody counts; 0 to 1e+09 */
  pieces: number | null;
  /** one of them; kg */
  piece_kg: number | null;
};

/** what the event's body holds besides the reply */
export type WantsBody = {
  /** how many readings and touch tests it takes in; 0 to 1e+09 */
  seen: number;
};

/** its make-up */
export type CaramelRowMaterialByWater = {
  /** mass fraction of water; 0 to 1 */
  water: number;
  /** mass fraction of protein; 0 to 1 */
  protein: number;
  /** mass fraction of fat; 0 to 1 */
  fat: number;
  /** mass fraction of carbohydrate without fibre; 0 to 1 */
  carbohydrate: number;
  /** mass fraction of fibre; 0 to 1 */
  fibre: number;
  /** mass fraction of ash; 0 to 1 */
  ash: number;
  /** weighed density; null: from the composition; 300 to 3000 kg/m³ */
  density_kg_m3: number | null;
};

/** windows */
export type CaramelRowWindows = {
  /** slab */
  slab: CaramelRowWindowsSlab;
  /** deposit */
  deposit: Deposit;
};

/** slab */
export type CaramelRowWindowsSlab = {
  /** coolest bulk temperature to pour at; 30 to 120 °C; 71.0 when left out */
  low_c: number;
  /** hottest bulk temperature to pour at; 30 to 120 °C; 77.0 when left out */
  high_c: number;
};

/** deposit */
export type Deposit = {
  /** coolest temperature to deposit at; 30 to 120 °C; 71.0 when left out */
  low_c: number;
  /** hottest temperature to deposit at; 30 to 120 °C; 82.0 when left out */
  high_c: number;
};

/** label */
export type CaramelRowLabel = {
  /** mass fraction of water on the label; null: as in firm caramel; 0 to 1 */
  water_share: number | null;
  /** mass fraction of protein on the label; null: as in firm caramel; 0 to 1 */
  protein_share: number | null;
  /** mass fraction of fat on the label; null: as in firm caramel; 0 to 1 */
  fat_share: number | null;
  /** mass fraction of carbohydrate on the label; null: as in firm caramel; 0 to 1 */
  carbohydrate_share: number | null;
  /** mass fraction of fibre on the label; null: as in firm caramel; 0 to 1 */
  fibre_share: number | null;
  /** mass fraction of ash on the label; null: as in firm caramel; 0 to 1 */
  ash_share: number | null;
};

/** targets */
export type ChocolateRowTargets = {
  /** coolest melt that leaves no old crystals; 35 to 60 °C */
  melt_low_c: number | null;
  /** hottest melt it bears; 35 to 60 °C */
  melt_high_c: number | null;
  /** lower end of cooling after the seed; 15 to 35 °C */
  cool_low_c: number | null;
  /** upper end of cooling after the seed; 15 to 35 °C */
  cool_high_c: number | null;
  /** lower end of the working range; 20 to 38 °C */
  work_low_c: number | null;
  /** upper end of the working range; 20 to 38 °C */
  work_high_c: number | null;
};

/** coating */
export type Coating = {
  /** how the pieces are coated; "fork" when left out */
  method: "fork" | "enrober" | "enrober_with_bottomer";
  /** all round; null: that of the method; 0.0001 to 0.01 m */
  thickness_m: number | null;
  /** weighed: chocolate taken up over the undipped weight; 0.01 to 5 */
  pickup_share: number | null;
  /** thickness of the pre-bottom; 0: none; 0 to 0.005 m; 0.0005 when left out */
  prebottom_m: number;
  /** inside width of the bowl that the pieces are dipped in; null: its depth is not counted; 0.05 to 1 m */
  bowl_width_m: number | null;
  /** time from one piece to the next; 0.5 to 600 s; 20.0 when left out */
  dip_s: number;
  /** whether each piece gets a mark on top; false when left out */
  top_mark: boolean;
  /** the salt that goes on top */
  salt: string | null;
  /** salt on one piece; null: not weighed; 1e-05 to 0.002 kg */
  salt_each_kg: number | null;
};

/** cluster */
export type Cluster = {
  /** one first deposit; 0.0005 to 0.5 kg */
  deposit_kg: number | null;
  /** one second deposit; 0: none; 0 to 0.5 kg; 0.0 when left out */
  second_kg: number;
  /** across the largest first deposit once it lies; 0.01 to 0.2 m */
  spread_m: number | null;
  /** free between two deposits; 0 to 0.3 m; 0.008 when left out */
  gap_m: number;
  /** laid as a level bed; null: counted out; 0.05 to 50 kg/m² */
  bed_kg_m2: number | null;
  /** what lies under the caramel; null: nothing */
  under: "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | null;
  /** weight of one; 5e-05 to 0.2 kg */
  under_each_kg: number | null;
  /** how many go under each cluster; 1 to 100; 3 when left out */
  under_count: number;
  /** what lies under the caramel; null: nothing */
  also: "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | null;
  /** weight of one; 5e-05 to 0.2 kg */
  also_each_kg: number | null;
  /** how many go under each cluster; 1 to 100; 3 when left out */
  also_count: number;
};

/** pocket */
export type Pocket = {
  /** inside of the box's pocket; null: unknown; 0.002 to 0.5 m */
  length_m: number | null;
  /** inside of the box's pocket; null: unknown; 0.002 to 0.5 m */
  width_m: number | null;
  /** inside of the box's pocket; null: unknown; 0.002 to 0.5 m */
  height_m: number | null;
};

/** so many of a product */
export type BoxRowLine = {
  /** a product */
  product_id: string;
  /** how many of it; 1 to 1000 */
  count: number;
};

/** so much of a material */
export type BoxRowPackaging = {
  /** materials/<id> */
  material: string;
  /** how much of it; 0 to 1000 */
  amount: number;
};

/** units */
export type Units = {
  /** unit of weights; "kg" when left out */
  mass: "kg" | "g" | "lb" | "oz";
  /** unit of lengths; "mm" when left out */
  length: "mm" | "cm" | "m" | "in";
  /** unit of temperatures; "°C" when left out */
  temperature: "°C" | "°F";
  /** unit of powers; "W" when left out */
  power: "W";
};

/** what the melt says of the oven */
export type ContributionOven = {
  /** caramel in the bowl; 0.05 to 10 kg */
  mass_kg: number;
  /** power on the rating plate; 200 to 3500 W */
  rated_w: number | null;
  /** power that this mass took up, by this batch alone; 20 to 3500 W */
  power_w: number;
  /** standard deviation of its logarithm; 0.001 to 2 */
  power_sd: number;
  /** hottest rise over mean rise, by this batch alone; null: not read; -10 to 20 */
  unevenness: number | null;
  /** its standard deviation; 0.001 to 5 */
  unevenness_sd: number | null;
};

/** what the cooling says of the base */
export type ContributionBase = {
  /** heat loss over that of the model, by this batch alone; 0.05 to 20 */
  loss_factor: number;
  /** standard deviation of its logarithm; 0.001 to 5 */
  loss_factor_sd: number;
  /** what start, room and contact are assumed to add, in ln(loss factor); 0 to 5 */
  spread_sd: number;
};

/** what the touches say of the temperature it is cut at */
export type Ready = {
  /** hottest point when firm enough, by the model at a loss factor of 1; 10 to 60 °C */
  core_c: number;
  /** by how much that moves with the logarithm of the loss factor; -100 to 100 K */
  per_log_k: number;
  /** its standard deviation; 0.1 to 20 K */
  core_sd_k: number;
};

/** what was counted */
export type Pieces = {
  /** centres planned; 1 to 1e+06 */
  planned: number;
  /** good centres counted; 0 to 1e+06 */
  counted: number;
};

/** one figure, planned against happened */
export type Compared = {
  /** power_w, jacket_s, ready_s, pieces or caramel_kg; the end says the unit */
  name: string;
  /** as planned; 0 to 1e+08 */
  planned: number;
  /** 10 % point of the plan; null: none; 0 to 1e+08 */
  low: number | null;
  /** 90 % point of the plan; null: none; 0 to 1e+08 */
  high: number | null;
  /** as it turned out; 0 to 1e+08 */
  happened: number;
};

/** one part */
export type Unused = {
  /** oven, base, pieces, trim or residue */
  part: string;
  /** why not */
  why: string;
};

/** what its label says; null: an older app made the line */
export type FullLabel = {
  /** lot of the caramel or chocolate */
  lot: string | null;
  /** lots of what lies under; [] when left out */
  under_lots: FullLabelUnderLot[];
  /** what it took of lots in stock; [] when left out */
  uses: FullLabelUse[];
  /** allergens of all it is made of; [] when left out */
  contains: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** whether all of these labels were copied; false when left out */
  labels_known: boolean;
  /** what was not washed off before it; [] when left out */
  may_contain: ("milk" | "nuts" | "almond" | "brazil_nut" | "cashew" | "hazelnut" | "macadamia" | "pecan" | "pine_nut" | "pistachio" | "walnut" | "peanuts" | "gluten" | "wheat" | "rye" | "barley" | "oats" | "soya" | "egg" | "sesame" | "sulphites" | "fish" | "crustaceans" | "molluscs" | "celery" | "mustard" | "lupin")[];
  /** why nothing of it is sold; null: it is not thrown away */
  thrown_away: "burnt" | "dropped" | "trial" | "unused" | "other" | null;
};

/** one */
export type FullLabelUnderLot = {
  /** its name; null: unnamed */
  material: string | null;
  /** its lot */
  lot: string;
};

/** a use */
export type FullLabelUse = {
  /** its id */
  lot_id: string;
  /** how much, in the lot's unit; 0 to 100000 */
  amount: number;
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
};

/** a count */
export type FullCount = {
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** how much, in the lot's unit; 0 to 100000 */
  left: number;
};

/** what was thrown away */
export type FullDiscarded = {
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** how much, in the lot's unit; 0 to 100000 */
  amount: number;
  /** why */
  why: "spoilt" | "past_best_by" | "damaged" | "dropped" | "recalled" | "other";
  /** the same in words */
  text: string;
};

/** when and why; null: it stands */
export type FullCancelled = {
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** why */
  why: string;
};

/** what was handed over */
export type FullHanded = {
  /** a box of the shop; null: single pieces or loose */
  box_id: string | null;
  /** a product of the shop; null: boxes */
  product_id: string | null;
  /** how many; 1 to 100000 */
  count: number | null;
  /** loose by weight; null: by count; 0.001 to 10000 kg */
  mass_kg: number | null;
  /** packed as; null: nobody wrote that down */
  pack_id: string | null;
  /** when, corrected; -1e+15 to 1e+15 ms */
  at_ms: number;
  /** the person at the phone */
  by: string | null;
  /** the event that said so */
  event_id: string;
  /** of the hand-overs written down; 0 to 20000 */
  nth: number;
};

/** what does not add up */
export type FullAskedOrderDifference = {
  /** what does not add up */
  code: "handed_twice" | "handed_more" | "handed_though_cancelled";
  /** what may be taken back */
  event_id: string | null;
};

/** a name */
export type Name = {
  /** <kind>/<id> */
  node: string;
  /** what it is called */
  name: string;
};

/** so much of a lot */
export type WeighedBodyLot = {
  /** the lot */
  lot_id: string;
  /** how much of it, in its unit; 1e-06 to 100000 */
  amount: number;
};

/** what was decided then; null: it is when it is folded */
export type Decided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** rest before it in which the caramel cooled; null: none; 0 to 36000 s */
  paused_s?: number | null;
};

/** what was decided then; null: it is when it is folded */
export type StirredBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** rest before it in which the caramel cooled; null: none; 0 to 36000 s */
  paused_s?: number | null;
  /** whether a reading is wanted after it; false when left out */
  read_wanted?: boolean | null;
  /** when a jacket is looked into again; null: it need not be; 0 to 1e+15 ms */
  look_ms?: number | null;
};

/** what was decided then; null: it is when it is folded */
export type ReadBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** rest before it in which the caramel cooled; null: none; 0 to 36000 s */
  paused_s?: number | null;
};

/** what was decided then; null: it is when it is folded */
export type TouchedBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** when to touch it again; null: it is firm; 0 to 1e+15 ms */
  again_ms?: number | null;
};

/** what was decided then; null: it is when it is folded */
export type ChilledBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** when to take it out and touch it; 0 to 1e+15 ms */
  due_ms: number;
};

/** what was decided then; null: it is when it is folded */
export type CoolingRefittedBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** when to touch it; 0 to 1e+15 ms */
  due_ms: number;
};

/** a bowl */
export type AskedBowl = {
  /** what its plan is called */
  name: string;
  /** lot of its chocolate */
  lot?: string | null;
};

/** what was decided then; null: it is when it is folded */
export type FilledBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** what is in the funnel; null: nothing */
  fill?: FilledBodyDecidedFill | null;
  /** what is in the bowl; null: not known; 0 to 1000 kg */
  bowl_kg?: number | null;
  /** what bowl and funnel held when this task began; null: none has; 0 to 1000 kg */
  base_kg?: number | null;
  /** when it began; null: none has; 0 to 1e+17 ms */
  begun_ms?: number | null;
  /** what was begun and is not done; null: nothing */
  under_way?: "lay" | "second" | null;
  /** the melt that begins in the bowl; null: none does */
  melt: Melt;
};

/** what is in the funnel; null: nothing */
export type FilledBodyDecidedFill = {
  /** when it was told of last; 0 to 1e+17 ms */
  at_ms: number;
  /** when it was filled; 0 to 1e+17 ms */
  filled_ms: number;
  /** when it was filled or read; 0 to 1e+17 ms */
  seen_ms: number;
  /** what is in it; 0 to 1000 kg */
  kg: number;
  /** how warm it is, as believed; -1000 to 1000 °C */
  now_c: number;
  /** how warm it was when filled; -1000 to 1000 °C; 150.0 when left out */
  filled_c?: number | null;
  /** standard deviation of now_c; 0 to 1000 K */
  sd_k: number;
  /** what it has lost since it was filled or read; -1000 to 1000 K; 0.0 when left out */
  lost_k?: number | null;
  /** how warm it is, on the safe side; -10000 to 1000 °C */
  sure_c: number;
  /** when it leaves its window, on the safe side; 0 to 1e+17 ms */
  thick_ms: number;
  /** when it likely does; 0 to 1e+17 ms */
  likely_ms: number;
  /** when it has to be seen to; 0 to 1e+17 ms */
  due_ms: number;
  /** why then */
  why: "thick" | "low" | "anew";
};

/** the melt that begins in the bowl; null: none does */
export type Melt = {
  /** caramel that is heated from now on; 0 to 1000 kg */
  mass_kg: number;
  /** how warm it is, as believed; -1000 to 1000 °C */
  start_c: number;
  /** standard deviation of start_c; 0 to 1000 K */
  start_sd_k: number;
  /** power it absorbs, as this melt has shown; null: as before; 0 to 100000 W */
  power_w?: number | null;
  /** its standard deviation; null: as before; 0 to 100000 W */
  power_sd_w?: number | null;
};

/** what was decided then; null: it is when it is folded */
export type FillReadBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** what is in the funnel; null: nothing */
  fill?: FilledBodyDecidedFill | null;
  /** what is in the bowl; null: not known; 0 to 1000 kg */
  bowl_kg?: number | null;
  /** what bowl and funnel held when this task began; null: none has; 0 to 1000 kg */
  base_kg?: number | null;
  /** when it began; null: none has; 0 to 1e+17 ms */
  begun_ms?: number | null;
  /** what was begun and is not done; null: nothing */
  under_way?: "lay" | "second" | null;
};

/** what was decided then; null: it is when it is folded */
export type FillEndedBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** what is in the funnel; null: nothing */
  fill?: FilledBodyDecidedFill | null;
  /** what is in the bowl; null: not known; 0 to 1000 kg */
  bowl_kg?: number | null;
  /** what bowl and funnel held when this task began; null: none has; 0 to 1000 kg */
  base_kg?: number | null;
  /** when it began; null: none has; 0 to 1e+17 ms */
  begun_ms?: number | null;
  /** what was begun and is not done; null: nothing */
  under_way?: "lay" | "second" | null;
  /** the melt that begins in the bowl; null: none does */
  melt?: Melt | null;
};

/** what was decided then; null: it is when it is folded */
export type TrayLaidBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** what is in the funnel; null: nothing */
  fill?: FilledBodyDecidedFill | null;
  /** what is in the bowl; null: not known; 0 to 1000 kg */
  bowl_kg?: number | null;
  /** what bowl and funnel held when this task began; null: none has; 0 to 1000 kg */
  base_kg?: number | null;
  /** when it began; null: none has; 0 to 1e+17 ms */
  begun_ms?: number | null;
  /** what was begun and is not done; null: nothing */
  under_way?: "lay" | "second" | null;
};

/** what was decided then; null: it is when it is folded */
export type LayingEndedBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** what is in the funnel; null: nothing */
  fill?: FilledBodyDecidedFill | null;
  /** what is in the bowl; null: not known; 0 to 1000 kg */
  bowl_kg?: number | null;
  /** what bowl and funnel held when this task began; null: none has; 0 to 1000 kg */
  base_kg?: number | null;
  /** when it began; null: none has; 0 to 1e+17 ms */
  begun_ms?: number | null;
  /** what was begun and is not done; null: nothing */
  under_way?: "lay" | "second" | null;
};

/** what was decided then; null: it is when it is folded */
export type TackTestedBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** what is in the funnel; null: nothing */
  fill?: FilledBodyDecidedFill | null;
  /** what is in the bowl; null: not known; 0 to 1000 kg */
  bowl_kg?: number | null;
  /** what bowl and funnel held when this task began; null: none has; 0 to 1000 kg */
  base_kg?: number | null;
  /** when it began; null: none has; 0 to 1e+17 ms */
  begun_ms?: number | null;
  /** what was begun and is not done; null: nothing */
  under_way?: "lay" | "second" | null;
  /** how much later than planned these turn tacky, as a factor; 0 to 100 */
  tack: number;
};

/** what was decided then; null: it is when it is folded */
export type SecondLaidBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** what is in the funnel; null: nothing */
  fill?: FilledBodyDecidedFill | null;
  /** what is in the bowl; null: not known; 0 to 1000 kg */
  bowl_kg?: number | null;
  /** what bowl and funnel held when this task began; null: none has; 0 to 1000 kg */
  base_kg?: number | null;
  /** when it began; null: none has; 0 to 1e+17 ms */
  begun_ms?: number | null;
  /** what was begun and is not done; null: nothing */
  under_way?: "lay" | "second" | null;
};

/** what was decided then; null: it is when it is folded */
export type TrayFreedBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** when it is tried again; null: it is free; 0 to 1e+15 ms */
  again_ms?: number | null;
};

/** what was decided then; null: it is when it is folded */
export type BowlReadBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** logarithm of how much faster it cools than its model says; -1000 to 1000 */
  faster: number;
  /** standard deviation of faster; 0 to 1000 */
  faster_sd: number;
  /** how long it may be used; null: it is out of its range */
  hold?: BowlReadBodyDecidedHold | null;
};

/** how long it may be used; null: it is out of its range */
export type BowlReadBodyDecidedHold = {
  /** time it stays in its working range; 0 to 1e+12 s */
  seconds_s: number;
  /** 10 % point; 0 to 1e+12 s */
  low_s: number;
  /** 90 % point; 0 to 1e+12 s */
  high_s: number;
};

/** what was decided then; null: it is when it is folded */
export type StoodBodyDecided = {
  /** version of the engine that decided; "" when left out */
  engine?: string | null;
  /** when what it builds on was told of; null: on nothing; 0 to 1e+15 ms */
  since_ms?: number | null;
  /** what its heights say so far; null: nothing yet */
  verdict?: "firm" | "borderline" | "slumps" | null;
  /** whether the test is over with it */
  last: boolean;
};

/** what was handed over */
export type HandedOverBodyLine = {
  /** a box of the shop; null: single pieces or loose */
  box_id?: string | null;
  /** a product of the shop; null: boxes */
  product_id?: string | null;
  /** how many; 1 to 100000 */
  count?: number | null;
  /** loose by weight; null: by count; 0.001 to 10000 kg */
  mass_kg?: number | null;
  /** packed as; null: nobody wrote that down */
  pack_id?: string | null;
};

/** basis of fields by dotted path */
export type BasisByField = Record<string, "typed" | "measured" | "published" | "assumed">;

/** how many closed batches a measured field rests on, by dotted path */
export type BatchesByField = Record<string, number>;

/** values by name; its end says the unit */
export type Values = Record<string, unknown>;

/** a built-in material, a composition or constants */
export type Material = "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | FullMaterialByWater | FullMaterialByConductivity;

/** a built-in base or one of its own */
export type Base = "steel_sheet" | "aluminium_tray" | "marble" | "granite" | "wood_board" | FullBaseByLayers;

/** the state of a batch that melts */
export type MeltingRun = SlabRun | ClusterRun;

/** signal words of ISO 3864-2 and ANSI Z535.6 */
export type SignalWord = "DANGER" | "WARNING" | "CAUTION" | "NOTICE";

/** how a clock sounds */
export type SoundName = "stir" | "read" | "ready" | "too_hot";

/** a number or a text to type */
export type ToType = Entry | TextEntry;

/** a button */
export type Action = EventButton | EntryButton;

/** the plan of a batch */
export type PlanDocument = SlabPlan | ClusterPlan | ChocolatePlan | StandupPlan;

/** what a run takes of the plan of a batch */
export type PlanTaken = SlabPlanTaken | ClusterPlanTaken | ChocolatePlanTaken | StandupPlanTaken;

/** the state of a batch */
export type Run = SlabRun | ClusterRun | ChocolateRun | StandupRun;

/** a list of the shop */
export type ShopList = "ovens" | "vessels" | "bases" | "bars" | "tables" | "frames" | "trays" | "funnels" | "caramels" | "chocolates" | "products" | "thermometers" | "materials" | "boxes" | "customers" | "suppliers" | "people";

/** a request to a plan that takes in what was measured */
export type PlanRequest = SlabPlanRequest | ClusterPlanRequest;

/** what does not add up of a lot */
export type Difference = "below_zero" | "used_before_it_came" | "never_came" | "written_twice" | "ring";

export type ChocolatePlanRequest = ChocolateTemperRequest;

export type CoolRefitRequest = RefitRequest;

export type LearnFoldReply = Measured;

export type MeltNextBurstReply = NextBurst;

export type OrderCheckReply = LotCheckReply;

export type PackCheckReply = LotCheckReply;

export type RunAdviseReply = Advice;

export type TableTimelineReply = TableBatchesReply;

export interface Requests {
  "units.convert": UnitsConvertRequest;
  "materials.properties": MaterialsPropertiesRequest;
  "materials.heat": MaterialsHeatRequest;
  "room.dew_point": RoomDewPointRequest;
  "flow.viscosity": FlowViscosityRequest;
  "melt.oven_from_water_test": MeltOvenFromWaterTestRequest;
  "melt.plan": MeltPlanRequest;
  "melt.next_burst": MeltNextBurstRequest;
  "melt.plan_jacket": MeltPlanJacketRequest;
  "pour.plan": PourPlanRequest;
  "cut.plan": CutPlanRequest;
  "cut.fit_frame": CutFitFrameRequest;
  "cool.plan": CoolPlanRequest;
  "cool.refit": CoolRefitRequest;
  "chocolate.coating": ChocolateCoatingRequest;
  "chocolate.temper": ChocolateTemperRequest;
  "chocolate.hold": ChocolateHoldRequest;
  "chocolate.salting": ChocolateSaltingRequest;
  "deposit.fill": DepositFillRequest;
  "room.advise": RoomAdviseRequest;
  "run.replay": RunReplayRequest;
  "run.apply": RunApplyRequest;
  "run.decide": RunDecideRequest;
  "run.advise": RunAdviseRequest;
  "batch.order": BatchOrderRequest;
  "shop.fold": ShopFoldRequest;
  "shop.check": ShopCheckRequest;
  "shop.density": ShopDensityRequest;
  "slab.plan": SlabPlanRequest;
  "cluster.learn": ClusterLearnRequest;
  "cluster.plan": ClusterPlanRequest;
  "chocolate.plan": ChocolatePlanRequest;
  "flow.stand_up_test": FlowStandUpTestRequest;
  "learn.contribution": LearnContributionRequest;
  "learn.fold": LearnFoldRequest;
  "learn.apply": LearnApplyRequest;
  "schedule.tasks": ScheduleTasksRequest;
  "schedule.plan": SchedulePlanRequest;
  "net.check": NetCheckRequest;
  "label.net_weight": LabelNetWeightRequest;
  "label.content": LabelContentRequest;
  "label.nutrition": LabelNutritionRequest;
  "label.lot_code": LabelLotCodeRequest;
  "label.best_by": LabelBestByRequest;
  "label.check_digit": LabelCheckDigitRequest;
  "trace.walk": TraceWalkRequest;
  "needs.gather": NeedsGatherRequest;
  "needs.plan": NeedsPlanRequest;
  "cost.batch": CostBatchRequest;
  "cost.price": CostPriceRequest;
  "paper.events": PaperEventsRequest;
  "table.batches": TableBatchesRequest;
  "table.timeline": TableTimelineRequest;
  "lot.fold": LotFoldRequest;
  "lot.check": LotCheckRequest;
  "stock.overview": StockOverviewRequest;
  "pack.fold": PackFoldRequest;
  "pack.boxes": PackBoxesRequest;
  "pack.check": PackCheckRequest;
  "order.fold": OrderFoldRequest;
  "order.check": OrderCheckRequest;
  "orders.overview": OrdersOverviewRequest;
}

export interface Replies {
  "units.convert": UnitsConvertReply;
  "materials.properties": MaterialsPropertiesReply;
  "materials.heat": MaterialsHeatReply;
  "room.dew_point": RoomDewPointReply;
  "flow.viscosity": FlowViscosityReply;
  "melt.oven_from_water_test": MeltOvenFromWaterTestReply;
  "melt.plan": MeltPlanReply;
  "melt.next_burst": MeltNextBurstReply;
  "melt.plan_jacket": MeltPlanJacketReply;
  "pour.plan": PourPlanReply;
  "cut.plan": CutPlanReply;
  "cut.fit_frame": CutFitFrameReply;
  "cool.plan": CoolPlanReply;
  "cool.refit": CoolRefitReply;
  "chocolate.coating": ChocolateCoatingReply;
  "chocolate.temper": ChocolateTemperReply;
  "chocolate.hold": ChocolateHoldReply;
  "chocolate.salting": ChocolateSaltingReply;
  "deposit.fill": DepositFillReply;
  "room.advise": RoomAdviseReply;
  "run.replay": RunReplayReply;
  "run.apply": RunApplyReply;
  "run.decide": RunDecideReply;
  "run.advise": RunAdviseReply;
  "batch.order": BatchOrderReply;
  "shop.fold": ShopFoldReply;
  "shop.check": ShopCheckReply;
  "shop.density": ShopDensityReply;
  "slab.plan": SlabPlanReply;
  "cluster.learn": ClusterLearnReply;
  "cluster.plan": ClusterPlanReply;
  "chocolate.plan": ChocolatePlanReply;
  "flow.stand_up_test": FlowStandUpTestReply;
  "learn.contribution": LearnContributionReply;
  "learn.fold": LearnFoldReply;
  "learn.apply": LearnApplyReply;
  "schedule.tasks": ScheduleTasksReply;
  "schedule.plan": SchedulePlanReply;
  "net.check": NetCheckReply;
  "label.net_weight": LabelNetWeightReply;
  "label.content": LabelContentReply;
  "label.nutrition": LabelNutritionReply;
  "label.lot_code": LabelLotCodeReply;
  "label.best_by": LabelBestByReply;
  "label.check_digit": LabelCheckDigitReply;
  "trace.walk": TraceWalkReply;
  "needs.gather": NeedsGatherReply;
  "needs.plan": NeedsPlanReply;
  "cost.batch": CostBatchReply;
  "cost.price": CostPriceReply;
  "paper.events": PaperEventsReply;
  "table.batches": TableBatchesReply;
  "table.timeline": TableTimelineReply;
  "lot.fold": LotFoldReply;
  "lot.check": LotCheckReply;
  "stock.overview": StockOverviewReply;
  "pack.fold": PackFoldReply;
  "pack.boxes": PackBoxesReply;
  "pack.check": PackCheckReply;
  "order.fold": OrderFoldReply;
  "order.check": OrderCheckReply;
  "orders.overview": OrdersOverviewReply;
}

export interface EventBodies {
  "batch_opened": BatchOpenedBody;
  "noted": NotedBody;
  "photographed": PhotographedBody;
  "taken_over": TakenOverBody;
  "left_out": LeftOutBody;
  "step_skipped": StepSkippedBody;
  "undone": UndoneBody;
  "redone": RedoneBody;
  "renamed": RenamedBody;
  "closed": ClosedBody;
  "pinned": PinnedBody;
  "thrown_away": ThrownAwayBody;
  "wash_told": WashToldBody;
  "washed": WashedBody;
  "ready_checked": ReadyCheckedBody;
  "weighed": WeighedBody;
  "old_weighed": OldWeighedBody;
  "lot_named": LotNamedBody;
  "counted": CountedBody;
  "weighed_out": WeighedOutBody;
  "burst_started": BurstStartedBody;
  "burst_ended": BurstEndedBody;
  "spot_read": SpotReadBody;
  "stirred": StirredBody;
  "read": ReadBody;
  "rested": RestedBody;
  "jacket_started": JacketStartedBody;
  "water_topped": WaterToppedBody;
  "poured": PouredBody;
  "slab_read": SlabReadBody;
  "touched": TouchedBody;
  "chilled": ChilledBody;
  "cooling_refitted": CoolingRefittedBody;
  "strip_tested": StripTestedBody;
  "dipping_started": DippingStartedBody;
  "salted": SaltedBody;
  "dipped": DippedBody;
  "set_hard": SetHardBody;
  "wrapped": WrappedBody;
  "freed": FreedBody;
  "cut": CutBody;
  "prebottomed": PrebottomedBody;
  "flipped": FlippedBody;
  "scored": ScoredBody;
  "filled": FilledBody;
  "fill_read": FillReadBody;
  "fill_ended": FillEndedBody;
  "allergens_checked": AllergensCheckedBody;
  "under_lot_named": UnderLotNamedBody;
  "under_laid": UnderLaidBody;
  "tray_laid": TrayLaidBody;
  "laying_ended": LayingEndedBody;
  "tack_tested": TackTestedBody;
  "second_laid": SecondLaidBody;
  "funnel_emptied": FunnelEmptiedBody;
  "tray_freed": TrayFreedBody;
  "separated": SeparatedBody;
  "bowl_burst": BowlBurstBody;
  "bowl_read": BowlReadBody;
  "seeded": SeededBody;
  "bowl_warmed": BowlWarmedBody;
  "bowl_thickened": BowlThickenedBody;
  "bowl_used": BowlUsedBody;
  "leftover_named": LeftoverNamedBody;
  "stood": StoodBody;
  "shop_set": ShopSetBody;
  "received": ReceivedBody;
  "made": MadeBody;
  "opened": OpenedBody;
  "left_counted": LeftCountedBody;
  "discarded": DiscardedBody;
  "merged": MergedBody;
  "placed": PlacedBody;
  "changed": ChangedBody;
  "cancelled": CancelledBody;
  "handed_over": HandedOverBody;
  "packed": PackedBody;
  "net_weighed": NetWeighedBody;
  "labels_printed": LabelsPrintedBody;
  "unpacked": UnpackedBody;
}

export type FunctionName = keyof Requests;
export type EventKind = keyof EventBodies;
/** An event of one kind. */
export type EventOf<K extends EventKind> = Omit<BenchEvent, "kind" | "body"> & { kind: K; body: EventBodies[K] };
/** An event of a kind that this version knows; the log may hold those of a newer one. */
export type KnownEvent = { [K in EventKind]: EventOf<K> }[EventKind];
