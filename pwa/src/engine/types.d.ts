// Generated from server/amberbench/engine/fields.py by `amberbench types`. Do not edit.
// SI units, temperatures in °C; the unit stands at the end of each name.

export interface UnitsConvertRequest {
  /** what to convert; -1e+12 to 1e+12 */
  value: number;
  /** its unit */
  from: string;
  /** the unit wanted */
  to: string;
}

export interface UnitsConvertReply {
  /** the converted value; -1e+16 to 1e+16 */
  value: number;
}

export interface MaterialsPropertiesRequest {
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** temperature; -40 to 150 °C */
  temp_c: number;
}

export interface MaterialsPropertiesReply {
  /** density; 0 to 20000 kg/m³ */
  density_kg_m3: number;
  /** specific heat; 0 to 10000 J/(kg K) */
  heat_capacity_j_kgk: number;
  /** thermal conductivity; 0 to 500 W/(m K) */
  conductivity_w_mk: number;
  /** thermal diffusivity; 0 to 5 m²/s */
  diffusivity_m2_s: number;
}

export interface MaterialsHeatRequest {
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** mass; 0 to 1000 kg */
  mass_kg: number;
  /** first temperature; -40 to 150 °C */
  from_c: number;
  /** last temperature; -40 to 150 °C */
  to_c: number;
}

export interface MaterialsHeatReply {
  /** heat taken up; negative when cooling; -1e+10 to 1e+10 J */
  energy_j: number;
}

export interface RoomDewPointRequest {
  /** temperature of the air; -40 to 50 °C */
  temp_c: number;
  /** relative humidity as a fraction; 0.01 to 1 */
  humidity: number;
}

export interface RoomDewPointReply {
  /** temperature of a surface that just begins to sweat; -100 to 60 °C */
  dew_point_c: number;
}

export interface FlowViscosityRequest {
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
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface FlowViscosityReply {
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
}

export interface MeltOvenFromWaterTestRequest {
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
}

export interface MeltOvenFromWaterTestReply {
  /** power the water absorbed; 0 to 5000 W */
  power_w: number;
  /** its standard deviation; 0 to 5000 W */
  power_sd_w: number;
}

export interface MeltPlanRequest {
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
  /** the bowl or jug; null: none counted */
  vessel?: Vessel | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface MeltPlanReply {
  /** the plan, to be corrected by every reading; none when it starts in the window */
  bursts: Burst[];
  /** bursts and stirs together; 0 to 36000 s */
  total_s: number;
  /** energy the caramel and the vessel take up; -1e+08 to 1e+08 J */
  energy_j: number;
  /** every input that went into the answer */
  inputs: Input[];
}

export interface MeltNextBurstRequest {
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
  /** the bowl or jug; null: none counted */
  vessel?: Vessel | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
  /** what happened so far, in order */
  history: History[];
  /** standard deviation of start_c, where more than a block's; null: as a block's; 0 to 60 K */
  start_sd_k?: number | null;
}

export interface MeltNextBurstReply {
  /** what to do */
  action: "burst" | "ready" | "read_again" | "rest" | "stop";
  /** length of the burst or rest, 0 otherwise; 0 to 3600 s */
  seconds_s: number;
  /** what follows the burst */
  then: "turn" | "stir";
  /** whether a reading is wanted after this burst */
  read: boolean;
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
  /** `{code, values}`: why */
  reason: unknown;
}

export interface MeltPlanJacketRequest {
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
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface MeltPlanJacketReply {
  /** time until it is in the window; 0 to 1e+08 s */
  seconds_s: number;
  /** 10 % point; 0 to 1e+08 s */
  low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  high_s: number;
  /** every input that went into the answer */
  inputs: Input[];
}

export interface PourPlanRequest {
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
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface PourPlanReply {
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
}

export interface CutPlanRequest {
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
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface CutPlanReply {
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
}

export interface CutFitFrameRequest {
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
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface CutFitFrameReply {
  /** frames that fit, smallest area first */
  frames: Frame[];
  /** every input that went into the answer */
  inputs: Input[];
}

export interface CoolPlanRequest {
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
  /** hottest point when ready for the knife; 5 to 60 °C; 24.0 when left out */
  target_c?: number | null;
  /** slab length; 0.02 to 5 m; 0.35 when left out */
  length_m?: number | null;
  /** slab width; 0.02 to 5 m; 0.35 when left out */
  width_m?: number | null;
  /** temperature of the base at pouring; null: room; -20 to 60 °C */
  base_start_c?: number | null;
  /** heat loss over that of the model; 0.2 to 5; 1.0 when left out */
  loss_factor?: number | null;
  /** standard deviation of the logarithm of loss_factor; 0.01 to 1; 0.2 when left out */
  loss_factor_sd?: number | null;
  /** spread of start, room and contact from batch to batch, over what is assumed of them; 0.05 to 5; 1.0 when left out */
  spread?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface CoolPlanReply {
  /** time after pouring until it can be cut; 0 to 1e+08 s */
  ready_s: number;
  /** 10 % point; 0 to 1e+08 s */
  ready_low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  ready_high_s: number;
  /** hottest point at ready, raised to room + 1 K in a warm room; 5 to 60 °C */
  target_c: number;
  /** in order of time; those never reached are left out */
  milestones: Milestone[];
  /** core and surface over time */
  curve: Curve[];
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
}

export interface CoolRefitRequest {
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
  /** hottest point when ready for the knife; 5 to 60 °C; 24.0 when left out */
  target_c?: number | null;
  /** slab length; 0.02 to 5 m; 0.35 when left out */
  length_m?: number | null;
  /** slab width; 0.02 to 5 m; 0.35 when left out */
  width_m?: number | null;
  /** temperature of the base at pouring; null: room; -20 to 60 °C */
  base_start_c?: number | null;
  /** heat loss over that of the model; 0.2 to 5; 1.0 when left out */
  loss_factor?: number | null;
  /** standard deviation of the logarithm of loss_factor; 0.01 to 1; 0.2 when left out */
  loss_factor_sd?: number | null;
  /** spread of start, room and contact from batch to batch, over what is assumed of them; 0.05 to 5; 1.0 when left out */
  spread?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
  /** infrared readings so far; [] when left out */
  readings?: Reading[] | null;
  /** touch tests so far; [] when left out */
  touches?: Touch[] | null;
  /** how cold readings run; -5 to 5 K; 1.0 when left out */
  reading_low_k?: number | null;
  /** standard deviation of a reading; 0.05 to 10 K; 2.0 when left out */
  reading_sd_k?: number | null;
}

export interface CoolRefitReply {
  /** time after pouring until it can be cut; 0 to 1e+08 s */
  ready_s: number;
  /** 10 % point; 0 to 1e+08 s */
  ready_low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  ready_high_s: number;
  /** hottest point at ready, raised to room + 1 K in a warm room; 5 to 60 °C */
  target_c: number;
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
}

export interface ChocolateCoatingRequest {
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
  /** inside of the box's pocket; null: not compared */
  pocket_m?: PocketM | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface ChocolateCoatingReply {
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
  /** chocolate to have, bowl reserve included; 0 to 1e+09 kg */
  total_kg: number;
  /** the finished piece; null when its size is not known */
  outside_m: OutsideM | null;
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
}

export interface ChocolateTemperRequest {
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
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface ChocolateTemperReply {
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
}

export interface ChocolateHoldRequest {
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
  bowl?: Bowl | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface ChocolateHoldReply {
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
}

export interface ChocolateSaltingRequest {
  /** time from one piece to the next; 0.5 to 600 s */
  dip_s: number;
  /** time until a dipped piece takes no more salt; 10 to 3600 s; 120.0 when left out */
  set_s?: number | null;
  /** salt on one piece; null: not weighed; 1e-05 to 0.002 kg */
  salt_each_kg?: number | null;
  /** pieces to salt; 1 to 100000 */
  pieces?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface ChocolateSaltingReply {
  /** pieces to dip before the first of them is salted; 1 to 10000 */
  every: number;
  /** salt for all; null: not asked; 0 to 200 kg */
  salt_kg: number | null;
  /** every input that went into the answer */
  inputs: Input[];
}

export interface DepositFillRequest {
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
}

export interface DepositFillReply {
  /** time until it leaves the window or is empty; 0: it is too cool; 0 to 1e+08 s */
  seconds_s: number;
}

export interface RoomAdviseRequest {
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
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface RoomAdviseReply {
  /** temperature of a surface that just begins to sweat; -100 to 60 °C */
  dew_point_c: number | null;
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
}

export interface RunReplayRequest {
  /** the plan of the batch */
  plan: unknown;
  /** events, in any order */
  events: unknown[];
}

export interface RunReplayReply {
  /** the state of a batch, as `run.replay` makes it */
  run: unknown;
}

export interface RunApplyRequest {
  /** the state of a batch, as `run.replay` makes it */
  run: unknown;
  /** an event */
  event: unknown;
}

export interface RunApplyReply {
  /** the state of a batch, as `run.replay` makes it */
  run: unknown;
}

export interface RunDecideRequest {
  /** the state of a batch, as `run.replay` makes it */
  run: unknown;
  /** what is told, in its order */
  facts: Fact[];
}

export interface RunDecideReply {
  /** in their order */
  decided: unknown[];
}

export interface RunAdviseRequest {
  /** the state of a batch, as `run.replay` makes it */
  run: unknown;
  /** corrected time now; 0 to 1e+14 ms */
  at_ms: number;
}

export interface RunAdviseReply {
  /** the step that is open */
  step: string;
  /** `{code, values}`: the prompt */
  say: unknown;
  /** `{name, value, low, high}`: the one number that matters, or null */
  number: unknown;
  /** running clocks, soonest first */
  clocks: unknown[];
  /** `{code, kind, body}`, or `{code, entry}` that opens the keypad: the big button, or null */
  action: unknown;
  /** other buttons of this step */
  choices: unknown[];
  /** `{kind, field, name, low, high, last, likely_low, likely_high, band_low, band_high, body}`: a number to type, or null */
  entry: unknown;
  /** `{word, code}`: signal word and sentence, or null */
  caution: unknown;
  /** `{code, values}`: a second, smaller line, or null */
  more: unknown;
  /** `{name, request, kind, body, keep}`: call this function, write what `keep` names of its reply as an event of this kind; or null */
  wants: unknown;
  /** `{event_id, code}`: what undo would take back, or null */
  undo: unknown;
  /** the reply of melt.next_burst while melting, for the ladder; or null */
  melt: unknown;
}

export interface DayOrderRequest {
  /** corrected time now; 0 to 1e+14 ms */
  at_ms: number;
  /** the batches of today */
  batches: Batch[];
}

export interface DayOrderReply {
  /** in which order to take them */
  order: Order[];
  /** the bench as it stands */
  now: Now[];
  /** what to mind */
  warnings: Warning[];
}

export interface LearnContributionRequest {
  /** the batch */
  batch_id: string;
  /** its plan document */
  plan: unknown;
  /** its run, as `run.replay` makes it */
  run: unknown;
}

export interface LearnContributionReply {
  /** what it tells */
  contribution: Contribution;
}

export interface LearnFoldRequest {
  /** contributions of closed batches, in any order */
  batches: unknown[];
}

export interface LearnFoldReply {
  /** by id and mass */
  ovens: LearnFoldReplyOven[];
  /** by id */
  bases: LearnFoldReplyBase[];
  /** by id */
  products: Product[];
  /** what stays in the bowl; null: never weighed */
  residue: Trim | null;
  /** what was not taken in */
  ignored: Ignored[];
  /** batches taken in; 0 to 100000 */
  n: number;
}

export interface LearnApplyRequest {
  /** the reply of learn.fold */
  measured: unknown;
  /** a request to the function */
  request: unknown;
  /** which function it is for; "slab.plan" when left out */
  function?: "slab.plan" | "cluster.plan" | null;
  /** the oven it uses */
  oven_id?: string | null;
  /** the base it uses */
  base_id?: string | null;
}

export interface LearnApplyReply {
  /** the same request with the shop's measured values in it */
  request: unknown;
  /** what was taken in */
  used: Used[];
}

export interface ShopFoldRequest {
  /** the shop; null: that of the first event */
  shop_id?: string | null;
  /** events of kind shop_set, in any order */
  events: unknown[];
}

export interface ShopFoldReply {
  /** the shop document */
  shop: unknown;
  /** what was passed over */
  ignored: unknown[];
}

export interface ShopCheckRequest {
  /** shop, or <list>/<id> */
  doc: string;
  /** values by field, as the form has them; null: not set */
  values: unknown;
}

export interface ShopCheckReply {
  /** the same, as the log takes them */
  values: unknown;
}

export interface ShopDensityRequest {
  /** weight of the caramel; 0.005 to 20 kg */
  mass_kg: number;
  /** volume it fills; 1e-06 to 0.02 m³ */
  volume_m3: number;
}

export interface ShopDensityReply {
  /** its density; 800 to 1700 kg/m³ */
  density_kg_m3: number;
}

export interface PaperEventsRequest {
  /** corrected time of the newest event the batch has; 0 to 9e+13 ms */
  after_ms: number;
  /** corrected time of typing; 0 to 9e+13 ms */
  now_ms: number;
  /** when all was ready and weighed in; 0 to 9e+13 ms */
  weighed_at_ms?: number | null;
  /** caramel weighed in; 0.01 to 50 kg */
  weighed_kg?: number | null;
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
  /** fills of the funnel in order; [] when left out */
  fills?: PaperEventsRequestFill[] | null;
  /** trays in laying order; [] when left out */
  trays?: Tray[] | null;
}

export interface PaperEventsReply {
  /** in the order of the log */
  events: Event[];
}

export interface TableBatchesRequest {
  /** summaries, newest first */
  batches: TableBatchesRequestBatch[];
}

export interface TableBatchesReply {
  /** CSV by RFC 4180 */
  text: string;
}

export interface TableTimelineRequest {
  /** events, in any order */
  events: unknown[];
  /** events that did not fit; [] when left out */
  ignored?: string[] | null;
}

export interface SlabPlanRequest {
  /** caramel by weight */
  have?: Have | null;
  /** centres, or boxes and centres a box */
  want?: Want | null;
  /** slab height wanted; 0.002 to 0.1 m */
  slab_height_m: number;
  /** a frame in hand, or find one; "fit" when left out */
  frame?: "fit" | FrameByLength | null;
  /** longest frame; 0.02 to 5 m; 0.6 when left out */
  max_length_m?: number | null;
  /** widest frame; 0.02 to 5 m; 0.4 when left out */
  max_width_m?: number | null;
  /** heights of the bars owned, one entry for each set that closes a frame, up to three stacked; null: any height */
  bars_m?: number[] | null;
  /** the microwave oven; needed without a jacket */
  oven?: Oven | null;
  /** melt in a water jacket instead of an oven; null: in the oven */
  jacket?: Jacket | null;
  /** the bowl or jug; null: none counted */
  vessel?: Vessel | null;
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
  /** hottest point when ready for the knife; 5 to 60 °C; 24.0 when left out */
  target_c?: number | null;
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
  /** weight of one block as bought; 0.05 to 50 kg */
  block_kg?: number | null;
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
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface SlabPlanReply {
  /** caramel to weigh in; 0 to 50 kg */
  caramel_kg: number;
  /** blocks to open; 0 to 1000 */
  blocks: number;
  /** left of the last block; 0 to 50 kg */
  leftover_kg: number;
  /** as pour.plan */
  pour: PourPlanReply;
  /** as cut.plan */
  cut: Cut;
  /** as melt.plan; null in a jacket */
  melt: MeltPlanReply | null;
  /** as melt.plan_jacket; null in an oven */
  jacket: MeltPlanJacketReply | null;
  /** as cool.plan */
  cool: CoolPlanReply;
  /** other frames that would do */
  frames: Frame[];
  /** chocolate, outside size and salting as chocolate.coating and chocolate.salting; null: not dipped */
  dip: SlabPlanReplyDip | null;
  /** dew point of the room and what its air does, as room.advise */
  room: Room;
  /** the request to melt.plan, for melt.next_burst at the bench; in a jacket what the bench needs of it */
  melt_request: unknown;
  /** the request to cool.plan, for cool.refit at the bench */
  cool_request: unknown;
  /** what to mind */
  warnings: Warning[];
  /** every input that went into the answer */
  inputs: Input[];
}

export interface ClusterLearnRequest {
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
}

export interface ClusterLearnReply {
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
}

export interface ClusterPlanRequest {
  /** clusters wanted, in laying order; sizes may differ; empty: as many as caramel_kg gives; [] when left out */
  rows?: Row[] | null;
  /** caramel in hand; null: as rows want; 0.05 to 10 kg */
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
  tray: ClusterPlanRequestTray;
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
  /** hottest temperature to deposit at; 30 to 120 °C; 77.0 when left out */
  window_high_c?: number | null;
  /** scorch limit for any spot; 40 to 140 °C; 93.3 when left out */
  limit_c?: number | null;
  /** bulk temperature from which it darkens; 40 to 140 °C; 82.0 when left out */
  warn_c?: number | null;
  /** bulk temperature at which heating stops; 40 to 140 °C; 85.0 when left out */
  stop_c?: number | null;
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** relative humidity as a fraction; null: nobody measured it; 0.01 to 1 */
  humidity?: number | null;
  /** a built-in material, a composition or constants; "caramel" when left out */
  material?: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity | null;
  /** the microwave oven */
  oven: Oven;
  /** the bowl or jug; null: none counted */
  vessel?: Vessel | null;
  /** what the oven can set: 1, 5, 10, 15 or 30; 1 to 30 s; 5.0 when left out */
  step_s?: number | null;
  /** weight of one block as bought; 0.05 to 50 kg */
  block_kg?: number | null;
  /** fraction of the caramel that stays in the bowl; 0 to 0.3; 0.02 when left out */
  residue?: number | null;
  /** dip the clusters in chocolate, by weighed pick-up; null: they stay plain */
  dip?: Dip | null;
  /** what a stand-up test said of it; null: none was made */
  firmness?: "firm" | "borderline" | "slumps" | null;
  /** how a piece felt at delivery; null: not squeezed */
  squeeze?: "firm" | "soft" | "brittle" | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface ClusterPlanReply {
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
  /** time a fresh fill stays warm enough, on the safe side; standing, if sooner empty; 0 to 1e+08 s */
  safe_s: number;
  /** fills; 1 to 100000 */
  fills: number;
  /** times the caramel has to be warmed again; 0 to 100000 */
  reheats: number;
  /** time to lay a full tray; 0 to 1e+08 s */
  tray_s: number;
  /** when a second deposit may go on, after the first was laid; null: none is planned */
  second: Second | null;
  /** when the tray can be freed, after its last deposit was laid */
  free: Free;
  /** as melt.plan */
  melt: MeltPlanReply;
  /** the request to melt.plan, for melt.next_burst at the bench */
  melt_request: unknown;
  /** the request to deposit.fill without now_c and fill_kg, for the bench */
  fill_request: unknown;
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
}

export interface ChocolatePlanRequest {
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
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
  /** the bowl; null: none counted */
  bowl?: Bowl | null;
}

export interface ChocolatePlanReply {
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
  bowl_request: unknown;
}

export interface FlowStandUpTestRequest {
  /** heights of the cube, the fresh one first */
  heights: Height[];
  /** room temperature; -5 to 45 °C; 21.0 when left out */
  room_c?: number | null;
  /** basis of fields by dotted path: typed, measured, published or assumed */
  basis?: unknown;
  /** how many closed batches a measured field rests on, by dotted path */
  batches?: unknown;
}

export interface FlowStandUpTestReply {
  /** share of its first height that is lost; 0 to 1 */
  lost_fraction: number;
  /** whether it stays square in this room */
  verdict: "firm" | "borderline" | "slumps";
  /** every input that went into the answer */
  inputs: Input[];
}

export interface MaterialByWater {
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
}

export interface MaterialByConductivity {
  /** thermal conductivity; 0.005 to 500 W/(m K) */
  conductivity_w_mk: number;
  /** density; 1 to 20000 kg/m³ */
  density_kg_m3: number;
  /** specific heat; 100 to 10000 J/(kg K) */
  heat_capacity_j_kgk: number;
}

export interface Input {
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
}

export interface Oven {
  /** power on the rating plate; 200 to 3500 W */
  rated_w?: number | null;
  /** power that this mass absorbs, as measured; 100 to 3500 W */
  power_w?: number | null;
  /** standard deviation of power_w; 1 to 1500 W */
  power_sd_w?: number | null;
  /** whether it turns the bowl; true when left out */
  turntable?: boolean | null;
  /** hottest rise over mean rise in one burst; null: by turntable; 1 to 4 */
  unevenness?: number | null;
}

export interface Vessel {
  /** mass of the empty vessel; 0.01 to 20 kg */
  mass_kg: number;
  /** specific heat of the vessel; 300 to 3000 J/(kg K); 800.0 when left out */
  heat_capacity_j_kgk?: number | null;
}

export interface Burst {
  /** length of the burst; 1 to 300 s */
  seconds_s: number;
  /** bulk temperature expected after it and a stir; -1e+06 to 1e+06 °C */
  expected_c: number;
  /** 10 % point of expected_c; -1e+06 to 1e+06 °C */
  low_c: number;
  /** 90 % point of expected_c; -1e+06 to 1e+06 °C */
  high_c: number;
  /** hottest spot before the stir, 95 % point; 98 % until a reading is due; -1e+06 to 1e+06 °C */
  hottest_c: number;
}

export interface History {
  /** what happened */
  kind: "burst" | "stir" | "reading" | "rest";
  /** length of the burst or rest; 0 to 36000 s */
  seconds_s?: number | null;
  /** whether it stirs freely */
  free?: boolean | null;
  /** infrared reading; 0 to 150 °C */
  surface_c?: number | null;
}

export interface Block {
  /** length; 0.01 to 1 m */
  length_m: number;
  /** width; 0.01 to 1 m */
  width_m: number;
  /** height; 0.01 to 1 m */
  height_m: number;
}

export interface Warning {
  /** key of the sentence */
  code: string;
  /** numbers in it */
  values: unknown;
}

export interface Frame {
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
}

export interface TopByH {
  /** heat-transfer coefficient, radiation included; 0 to 500 W/(m² K) */
  h_w_m2k: number;
}

export interface BaseByLayers {
  /** layers from the slab downwards */
  layers: Layer[];
  /** base area over slab area; 1 to 20; 1.0 when left out */
  area_ratio?: number | null;
}

export interface Layer {
  /** thickness of the layer; 0.0001 to 0.2 m */
  thickness_m: number;
  /** thermal conductivity; 0.005 to 500 W/(m K) */
  conductivity_w_mk: number;
  /** density; 1 to 20000 kg/m³ */
  density_kg_m3: number;
  /** specific heat; 100 to 10000 J/(kg K) */
  heat_capacity_j_kgk: number;
}

export interface BottomByH {
  /** heat-transfer coefficient, radiation included; 0 to 500 W/(m² K) */
  h_w_m2k: number;
}

export interface Milestone {
  /** what the slab can do then */
  name: "skin" | "tacky" | "firm" | "free" | "ready" | "cold";
  /** time after pouring; 0 to 1e+08 s */
  at_s: number;
  /** 10 % point; 0 to 1e+08 s */
  low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  high_s: number;
}

export interface Curve {
  /** time after pouring; 0 to 1e+08 s */
  at_s: number;
  /** hottest point; -31 to 151 °C */
  core_c: number;
  /** top surface; -31 to 151 °C */
  surface_c: number;
}

export interface Reading {
  /** time after pouring; 0 to 1e+06 s */
  at_s: number;
  /** infrared reading of the top; -10 to 150 °C */
  surface_c: number;
}

export interface Touch {
  /** time after pouring; 0 to 1e+06 s */
  at_s: number;
  /** whether the middle felt firm enough to cut */
  firm: boolean;
}

export interface Piece {
  /** length; 0.002 to 0.3 m */
  length_m: number;
  /** width; 0.002 to 0.3 m */
  width_m: number;
  /** height; 0.002 to 0.3 m */
  height_m: number;
}

export interface ThicknessM {
  /** below; 0 to 0.01 m */
  bottom: number;
  /** on each side; 0 to 0.01 m */
  side: number;
  /** above; 0 to 0.01 m */
  top: number;
}

export interface PocketM {
  /** length; 0.002 to 0.5 m */
  length_m: number;
  /** width; 0.002 to 0.5 m */
  width_m: number;
  /** height; 0.002 to 0.5 m */
  height_m: number;
}

export interface OutsideM {
  /** length; 0.002 to 100000 m */
  length_m: number;
  /** width; 0.002 to 100000 m */
  width_m: number;
  /** height; 0.002 to 100000 m */
  height_m: number;
}

export interface Targets {
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
}

export interface Step {
  /** the step */
  name: "melt" | "seed" | "cool" | "work";
  /** lower end of its range; 0 to 100 °C */
  low_c: number;
  /** upper end; 0 to 100 °C */
  high_c: number;
}

export interface Bowl {
  /** mass of the empty bowl; 0.01 to 20 kg */
  mass_kg: number;
  /** specific heat; 300 to 3000 J/(kg K); 800.0 when left out */
  heat_capacity_j_kgk?: number | null;
}

export interface Fact {
  /** what happened */
  kind: string;
  /** when, corrected; 0 to 1e+14 ms */
  at_ms: number;
  /** its body */
  body: unknown;
}

export interface Batch {
  /** the batch */
  id: string;
  /** its kind; a stand-up test is left alone and takes no part */
  kind: "slab" | "cluster" | "chocolate" | "standup";
  /** what people call it; "" when left out */
  name?: string | null;
  /** allergens on the labels of its caramel and chocolate; [] when left out */
  contains?: ("milk" | "nuts" | "peanuts" | "gluten" | "soya" | "egg" | "sesame" | "sulphites")[] | null;
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
  /** since when it is in this state; null: never; 0 to 1e+14 ms */
  since_ms?: number | null;
  /** when hands were last at it; null: never; 0 to 1e+14 ms */
  touched_ms?: number | null;
  /** when tools, surfaces and hands were last washed for it; null: never; 0 to 1e+14 ms */
  washed_ms?: number | null;
  /** when a wash for it was last done, or passed over; null: never; 0 to 1e+14 ms */
  answered_ms?: number | null;
}

export interface Order {
  /** the batch */
  id: string;
  /** all it holds; [] when left out */
  allergens: ("milk" | "nuts" | "peanuts" | "gluten" | "soya" | "egg" | "sesame" | "sulphites")[];
  /** those of which something would be left */
  after: string[];
  /** what to wash off before it; empty: no wash; [] when left out */
  wash: ("milk" | "nuts" | "peanuts" | "gluten" | "soya" | "egg" | "sesame" | "sulphites")[];
}

export interface Now {
  /** the batch */
  id: string;
  /** those of which something is left */
  after: After[];
  /** what to wash off if hands go to it now; empty: no wash; [] when left out */
  wash: ("milk" | "nuts" | "peanuts" | "gluten" | "soya" | "egg" | "sesame" | "sulphites")[];
  /** when hands were last at those; null: never; 0 to 1e+14 ms */
  until_ms: number | null;
}

export interface After {
  /** the batch */
  id: string;
  /** what people call it; "" when left out */
  name: string;
  /** allergens; [] when left out */
  allergens: ("milk" | "nuts" | "peanuts" | "gluten" | "soya" | "egg" | "sesame" | "sulphites")[];
}

export interface Contribution {
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
  /** what the melt says of the oven */
  oven: ContributionOven | null;
  /** what the cooling says of the base */
  base: Base | null;
  /** what was counted */
  pieces: Pieces | null;
  /** trim weighed, over the caramel weighed in; 0 to 1 */
  trim: number | null;
  /** left in the bowl, over the same; 0 to 0.3 */
  residue: number | null;
  /** planned against happened; [] when left out */
  compared: Compared[];
  /** what the batch does not tell, and why; [] when left out */
  unused: Unused[];
}

export interface ContributionOven {
  /** caramel in the bowl; 0.05 to 10 kg */
  mass_kg: number;
  /** power on the rating plate; 200 to 3500 W */
  rated_w: number | null;
  /** power that this mass took up, by this batch alone; 20 to 3500 W */
  power_w: number;
  /** standard deviation of its logarithm; 0.001 to 2 */
  power_sd: number;
}

export interface Base {
  /** heat loss over that of the model, by this batch alone; 0.05 to 20 */
  loss_factor: number;
  /** standard deviation of its logarithm; 0.001 to 5 */
  loss_factor_sd: number;
  /** what start, room and contact are assumed to add, in ln(loss factor); 0 to 5 */
  spread_sd: number;
}

export interface Pieces {
  /** centres planned; 1 to 1e+06 */
  planned: number;
  /** good centres counted; 0 to 1e+06 */
  counted: number;
}

export interface Compared {
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
}

export interface Unused {
  /** oven, base, pieces, trim or residue */
  part: string;
  /** why not */
  why: string;
}

export interface LearnFoldReplyOven {
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
  /** batches it rests on; 1 to 100000 */
  n: number;
}

export interface MassBand {
  /** from this mass; 0 to 20 kg */
  low_kg: number;
  /** up to this mass; 0 to 20 kg */
  high_kg: number;
}

export interface LearnFoldReplyBase {
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
}

export interface Product {
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
}

export interface Trim {
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
}

export interface Ignored {
  /** the batch; null: it has no id */
  batch_id: string | null;
  /** oven, base, pieces, trim or residue; null: all of it */
  part: string | null;
  /** a problem's code */
  why: string;
}

export interface Used {
  /** dotted path in the request */
  field: string;
  /** the measured value; 0 to 1e+06 */
  value: number;
  /** batches it rests on; 1 to 100000 */
  n: number;
}

export interface PaperEventsRequestBurst {
  /** when it was started; 0 to 9e+13 ms */
  at_ms: number;
  /** time set on the oven; 1 to 600 s */
  seconds_s: number;
  /** whether it stirred freely after it; false when left out */
  free?: boolean | null;
  /** infrared reading after the stir; 0 to 150 °C */
  surface_c?: number | null;
}

export interface Slab {
  /** when it was read or pressed; 0 to 9e+13 ms */
  at_ms: number;
  /** infrared reading of the slab; -10 to 150 °C */
  surface_c?: number | null;
  /** whether the middle felt firm enough to cut */
  firm?: boolean | null;
}

export interface Fill {
  /** one fill of the funnel; 0.001 to 20 kg */
  fill_kg: number;
  /** coolest that the bowl is ready at; 20 to 150 °C */
  low_c: number;
}

export interface PaperEventsRequestFill {
  /** when the funnel was filled; 0 to 9e+13 ms */
  at_ms: number;
  /** infrared reading into it; 0 to 150 °C */
  surface_c?: number | null;
}

export interface Tray {
  /** when it was laid; 0 to 9e+13 ms */
  laid_at_ms?: number | null;
  /** when it had its second deposit; 0 to 9e+13 ms */
  second_at_ms?: number | null;
  /** when it came off its paper; 0 to 9e+13 ms */
  freed_at_ms?: number | null;
}

export interface Event {
  /** what happened */
  kind: string;
  /** when, corrected; 0 to 1e+14 ms */
  at_ms: number;
  /** its body, with `typed_at_ms` */
  body: unknown;
}

export interface TableBatchesRequestBatch {
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
  /** weighed in, else planned; -1e+300 to 1e+300 kg */
  caramel_kg?: number | null;
  /** pieces counted by planned mass of one; null before the count; -1e+300 to 1e+300 kg */
  good_kg?: number | null;
  /** the phone that opened it; "" when left out */
  device_id?: string | null;
  /** how many events it has; 0 to 1e+09; 0 when left out */
  events?: number | null;
}

export interface Have {
  /** caramel in hand; 0.05 to 50 kg */
  kg: number;
}

export interface Want {
  /** centres; 1 to 5000 */
  pieces?: number | null;
  /** boxes; 1 to 1000 */
  boxes?: number | null;
  /** centres in a box; 1 to 500 */
  per_box?: number | null;
}

export interface FrameByLength {
  /** frame length; 0.02 to 5 m */
  length_m: number;
  /** frame width; 0.02 to 5 m */
  width_m: number;
}

export interface Jacket {
  /** the jacket's water; 40 to 140 °C */
  water_c: number;
  /** shortest side of the block, the others equal; null: a cube; 0.01 to 0.3 m */
  thickness_m?: number | null;
  /** size of the pieces it was chopped into; null: whole; 0.005 to 0.6 m */
  chopped_m?: number | null;
}

export interface Windows {
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
}

export interface Dip {
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
  /** chocolate that must stay in the bowl for the last piece to be dipped; 0 to 20 kg; 0.3 when left out */
  bowl_reserve_kg?: number | null;
  /** inside of the box's pocket; null: not compared */
  pocket_m?: PocketM | null;
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
}

export interface Cut {
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
}

export interface SlabPlanReplyDip {
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
  /** chocolate to have, bowl reserve included; 0 to 1e+09 kg */
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
}

export interface Room {
  /** temperature of a surface that just begins to sweat; -100 to 60 °C */
  dew_point_c: number | null;
  /** what to mind */
  warnings: Warning[];
}

export interface Under {
  /** what lies under the caramel: a built-in material, a composition or constants */
  material: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity;
  /** weight of one; 5e-05 to 0.2 kg */
  kg_each: number;
  /** how many go under each cluster; 1 to 100; 1 when left out */
  count?: number | null;
}

export interface Bed {
  /** what the bed is mixed from; the shares sum to 1 ± 0.02 */
  materials: Material[];
  /** weight of the bed over its area; 0.05 to 50 kg/m² */
  bed_kg_m2: number;
}

export interface Material {
  /** what lies under the caramel: a built-in material, a composition or constants */
  material: "caramel" | "dark_chocolate" | "milk_chocolate" | "white_chocolate" | "almond" | "cashew" | "hazelnut" | "macadamia" | "peanut" | "pecan" | "pistachio" | "walnut" | "pretzel" | MaterialByWater | MaterialByConductivity;
  /** its share of the bed's weight; 0.001 to 1 */
  share: number;
}

export interface Row {
  /** clusters of this size; 1 to 20000 */
  clusters: number;
  /** one first deposit; 0.0005 to 0.5 kg */
  deposit_kg: number;
}

export interface ClusterPlanRequestTray {
  /** length inside; 0.03 to 0.8 m */
  length_m: number;
  /** width inside; 0.03 to 0.8 m */
  width_m: number;
  /** kept free along every edge; 0 to 0.2 m; 0.01 when left out */
  rim_m?: number | null;
}

export interface Funnel {
  /** brimful; 0.0002 to 0.01 m³ */
  volume_m3: number;
  /** share that is filled; 0.25 to 1; 0.75 when left out */
  fill?: number | null;
  /** heat the fill loses through wall and open top; 1 to 60 W/(m² K); 10.0 when left out */
  h_w_m2k?: number | null;
}

export interface Size {
  /** clusters of this size; 1 to 100000 */
  clusters: number;
  /** one first deposit; 0 to 0.5 kg */
  deposit_kg: number;
  /** across it once it lies; 0 to 0.2 m */
  spread_m: number;
}

export interface ByTray {
  /** trays; 1 to 20000 */
  trays: number;
  /** clusters of each size, in laying order */
  sizes: Size[];
}

export interface ClusterPlanReplyUnder {
  /** as asked */
  material: unknown;
  /** weight to have ready; 0 to 1e+06 kg */
  kg: number;
  /** pieces to have ready; null: a bed, weighed; 0 to 1e+07 */
  count: number | null;
  /** its allergen, by its name; null: none known */
  allergen: "milk" | "nuts" | "peanuts" | "gluten" | "soya" | "egg" | "sesame" | "sulphites" | null;
}

export interface ClusterPlanReplyBed {
  /** on a tray; 0 to 40 kg */
  tray_kg: number;
  /** on the last tray; 0 to 40 kg */
  last_kg: number;
}

export interface Second {
  /** from when it is tacky; 0 to 1e+08 s */
  from_s: number;
  /** from when it is too cold to weld; 0 to 1e+08 s */
  to_s: number;
}

export interface Free {
  /** when it is most likely free from tray and paper; 0 to 1e+08 s */
  from_s: number;
  /** 90 % point; 0 to 1e+08 s */
  to_s: number;
}

export interface Hold {
  /** time until it leaves the working range; 0 when it is outside; 0 to 1e+08 s */
  seconds_s: number;
  /** 10 % point; 0 to 1e+08 s */
  low_s: number;
  /** 90 % point; 0 to 1e+08 s */
  high_s: number;
}

export interface Height {
  /** time since the cube was set down; 0 to 3e+06 s */
  at_s: number;
  /** its height then; 0.0005 to 0.3 m */
  height_m: number;
}

export interface Functions {
  "units.convert": { request: UnitsConvertRequest; reply: UnitsConvertReply };
  "materials.properties": { request: MaterialsPropertiesRequest; reply: MaterialsPropertiesReply };
  "materials.heat": { request: MaterialsHeatRequest; reply: MaterialsHeatReply };
  "room.dew_point": { request: RoomDewPointRequest; reply: RoomDewPointReply };
  "flow.viscosity": { request: FlowViscosityRequest; reply: FlowViscosityReply };
  "melt.oven_from_water_test": { request: MeltOvenFromWaterTestRequest; reply: MeltOvenFromWaterTestReply };
  "melt.plan": { request: MeltPlanRequest; reply: MeltPlanReply };
  "melt.next_burst": { request: MeltNextBurstRequest; reply: MeltNextBurstReply };
  "melt.plan_jacket": { request: MeltPlanJacketRequest; reply: MeltPlanJacketReply };
  "pour.plan": { request: PourPlanRequest; reply: PourPlanReply };
  "cut.plan": { request: CutPlanRequest; reply: CutPlanReply };
  "cut.fit_frame": { request: CutFitFrameRequest; reply: CutFitFrameReply };
  "cool.plan": { request: CoolPlanRequest; reply: CoolPlanReply };
  "cool.refit": { request: CoolRefitRequest; reply: CoolRefitReply };
  "chocolate.coating": { request: ChocolateCoatingRequest; reply: ChocolateCoatingReply };
  "chocolate.temper": { request: ChocolateTemperRequest; reply: ChocolateTemperReply };
  "chocolate.hold": { request: ChocolateHoldRequest; reply: ChocolateHoldReply };
  "chocolate.salting": { request: ChocolateSaltingRequest; reply: ChocolateSaltingReply };
  "deposit.fill": { request: DepositFillRequest; reply: DepositFillReply };
  "room.advise": { request: RoomAdviseRequest; reply: RoomAdviseReply };
  "run.replay": { request: RunReplayRequest; reply: RunReplayReply };
  "run.apply": { request: RunApplyRequest; reply: RunApplyReply };
  "run.decide": { request: RunDecideRequest; reply: RunDecideReply };
  "run.advise": { request: RunAdviseRequest; reply: RunAdviseReply };
  "day.order": { request: DayOrderRequest; reply: DayOrderReply };
  "learn.contribution": { request: LearnContributionRequest; reply: LearnContributionReply };
  "learn.fold": { request: LearnFoldRequest; reply: LearnFoldReply };
  "learn.apply": { request: LearnApplyRequest; reply: LearnApplyReply };
  "shop.fold": { request: ShopFoldRequest; reply: ShopFoldReply };
  "shop.check": { request: ShopCheckRequest; reply: ShopCheckReply };
  "shop.density": { request: ShopDensityRequest; reply: ShopDensityReply };
  "paper.events": { request: PaperEventsRequest; reply: PaperEventsReply };
  "table.batches": { request: TableBatchesRequest; reply: TableBatchesReply };
  "table.timeline": { request: TableTimelineRequest; reply: TableBatchesReply };
  "slab.plan": { request: SlabPlanRequest; reply: SlabPlanReply };
  "cluster.learn": { request: ClusterLearnRequest; reply: ClusterLearnReply };
  "cluster.plan": { request: ClusterPlanRequest; reply: ClusterPlanReply };
  "chocolate.plan": { request: ChocolatePlanRequest; reply: ChocolatePlanReply };
  "flow.stand_up_test": { request: FlowStandUpTestRequest; reply: FlowStandUpTestReply };
}
