import type { TABLES, TenantTable } from './tables.ts'

/**
 * The one list of what leaves in an archive of everything: each table with the columns that go, by hand, so that a new column, which may hold a secret, goes only
 * when somebody wrote it down here. A test holds it against the database's catalogue: what is neither here nor under `STAYS` with a reason fails it.
 * `company_id` itself goes nowhere: whoever takes the archive in says whose it is.
 */
export const EXPORTED = {
  absence: 'id version colleague_id vehicle_id from_day until_day word archived_at',
  agreement: 'id version site_id softener_id customer_id kind rule first_day counts_from notes ended_day end_why created_at archived_at',
  agreement_term: 'id agreement_id from_day until_day price_minor price_per created_at',
  agreement_turn: 'id version agreement_id due_day state job_id done_day reason',
  assignment: 'id visit_id colleague_id starts_at ends_at released',
  audit_entry: 'id at person_id command_id operation entity entity_id detail',
  bed: 'id version tank_id resin_kind volume_ft3 gravel_lb tube_cut_in began_earliest began_latest began_as_written first_seen_day last_seen_day ended_earliest ended_latest end_cause entered fact_sources began_visit_id ended_visit_id batch_id archived_at',
  bed_forecast:
    'id bed_id site_id water_supply_id run_id as_of_day computed_at due10_day due50_day due90_day chance_3_months chance_12_months chance_24_months chance_already_failed began_middle_day weakness question_key question month_chances drivers assumptions missing refusal',
  brine_tank: 'id version softener_id label notes archived_at',
  call_back: 'id version cause state due_day created_at call_id site_id job_id visit_id note outcome closed_at closed_by',
  calendar_feed: 'id version colleague_id person_id created_at ended_at',
  colleague:
    'id version person_id name does_all skills starts_at_home home_latitude home_longitude overtime_minor_per_hour shifts breaks archived_at erased_at',
  company_settings:
    'id version reminder_lead_days reminder_notices reminder_again_days send_from_minute send_until_minute rebeds_per_month day_start_minute day_end_minute yard_latitude yard_longitude planned_rebed_minor failure_minor beads_minor overtime_minor_per_hour risk_limit pool_fits lunch_minutes lunch_from_minute lunch_until_minute in_hand_minutes day_fill holiday_area holidays_worked head_address head_mail head_licence logo_width logo_height',
  consent: 'id version contact_id channel granted source since_day',
  contact: 'id version customer_id site_id role name phone other_phone email dead_email language batch_id archived_at erased_at',
  crew_day: 'id version day name vehicle_id starts_at ends_at notes',
  crew_day_member: 'id crew_day_id colleague_id',
  customer: 'id version name reference notes match_key batch_id created_at archived_at archive_reason erased_at',
  discrepancy: 'id version stock_item_id movement_id expected found opened_at settled_at',
  firm_figure: 'id version key value note archived_at',
  forecast_backtest: 'id as_of_day started_at finished_at data_hash origins result refusal',
  forecast_change: 'id bed_id run_id at from_due50 to_due50 cause',
  forecast_fit:
    'id version as_of_day started_at finished_at shown_at data_hash records failures ended_beds left_out summary parameters shared fell_back_because',
  forecast_group: 'id run_id by key beds failed_already first_month months years',
  forecast_month: 'id run_id water_supply_id month months mean low middle high beds',
  forecast_plan: 'id run_id finished_at limits months refusal',
  forecast_run:
    'id cause as_of_day parameters_version fit_id scope refits water_supply_id batch_id after_bed_id started_at finished_at beds',
  guide_entry: 'id version guide_id measure value_in entered at',
  import_batch:
    'id version file_name state header_line header mapping total_rows done_rows counts failure created_at applied_at created_by',
  import_row: 'id batch_id line cells status problems notes customer_id site_id softener_id before',
  inspection: 'id bed_id visit_id day capacity_share pressure_drop_psi moisture_share bead_condition notes source',
  job: 'id version site_id softener_id bed_id kind state due_earliest due_latest minutes crew_size notes asked_for state_reason created_at closed_day after_job_id after_least_days needs_vehicle',
  kit_reservation: 'id version visit_id stock_item_id quantity state',
  material_line: 'id version job_id stock_item_id quantity returned state way handed_at',
  merging: 'id version kind kept_id gone_id town moved at person_id undone_at',
  message:
    'id version reminder_id contact_id channel address subject body state state_reason tries try_after sending_since settled_at created_at visit_id file_name file_state file_bytes file_sha256',
  movement: 'id stock_item_id quantity reason visit_id job_id at person_id',
  own_text: 'id version channel language subject body changed_at',
  owner_decision: 'id bed_id person_id at verdict answers reasons law',
  owner_guide: 'id version softener_id person_id created_at link_until withdrawn_at state bed_id step to_fix ended job_id',
  phone_call:
    'id version at person_id site_id softener_id customer_id caller_name caller_phone sees words advised still_soft hard_since_day hard_since_latest hard_since_as_said bed_id follows job_id visit_id',
  picture: 'id version visit_id guide_id kind state taken_at person_id sent_bytes sent_sha256 bytes sha256 width height begun_at stored_at',
  planned_rebed: 'id plan_id bed_id month earliest_month latest_month',
  pre_treatment: 'id version softener_id kind from_day to_day source archived_at',
  reminder: 'id version bed_id site_id contact_id channel notice state state_reason due_earliest due_latest created_at link_until',
  reminder_answer: 'id version reminder_id kind days ask_after done_day done_by created_at',
  set_aside:
    'id version kind command_id queue_id sequence visit_id person_id command content reason made_at clock_ahead_minutes received_at settled_at settled_by',
  signature: 'id version visit_id answer name at person_id picture_id',
  site: 'id version label street town region postcode latitude longitude access_notes notes visit_weekdays visit_from visit_until water_supply_id match_key batch_id created_at archived_at archive_reason',
  softener:
    'id version site_id label location arrangement installed_earliest installed_latest installed_as_written people_served notes match_key batch_id condemned_day archived_at archive_reason',
  stock_item: 'id version name kind unit bag_ft3 resin_kind tube_od_in on_hand price_minor lead_days archived_at',
  supply_period:
    'id version water_supply_id from_day disinfectant residual_mg_l hardness_gpg iron_mg_l temperature_c entered source withdrawn_at',
  tank: 'id version softener_id position diameter_in height_in nominal_grains size_as_written fact_sources batch_id archived_at',
  tenure: 'id version site_id customer_id from_day to_day',
  valve: 'id version softener_id tank_id label control backwash_gpm tube_od_in card_id notes archived_at',
  vehicle: 'id version name volume_ft3 weight_lb archived_at',
  vehicle_use: 'id visit_id vehicle_id starts_at ends_at released',
  visit:
    'id version job_id crew_day_id starts_at ends_at state outcome close_out notes closed_at closed_by offer_id arrive_from arrive_until promised_by promised_at promised_person_id started_at running_until',
  water_supply: 'id version name kind notes batch_id archived_at',
  water_test:
    'id version site_id softener_id visit_id day point hardness_gpg free_chlorine_mg_l total_chlorine_mg_l iron_mg_l manganese_mg_l ph dissolved_solids_mg_l temperature_c entered source batch_id withdrawn_at',
  window_offer: 'id version job_id state expires_at created_at',
} as const satisfies Partial<Record<TenantTable, string>>

export type ExportedTable = keyof typeof EXPORTED

/** The columns of a table that go. */
export const exportedColumns = (table: ExportedTable): string[] => EXPORTED[table].split(' ')

/** Of the company itself, in `company.json`. */
export const EXPORTED_OF_COMPANY = 'id name time_zone unit_system currency locale telephone paper created_at'
/** Of each of its people, by identity, in `company.json`; see packages/identity/exported-people.ts. */
export const EXPORTED_OF_PEOPLE = { membership: 'person_id role created_at ended_at', person: 'id name email language' } as const

type Identity = (typeof TABLES)['identity'][number]

/** What belongs to a company or to its people and stays, with the reason: a whole table, or a column of one that goes. */
export const STAYS: Readonly<Record<string, string>> = {
  applied_command: 'guards against a command sent twice within days; what it did is in the audit trail',
  'company.closing_since': 'a company that goes on elsewhere is not being closed there',
  'company.closes_at': 'a company that goes on elsewhere is not being closed there',
  'company.erased_since': 'a mark of the erasing itself',
  company_export: 'says which archives were made, and no archive holds itself',
  import_file_piece: 'a file that is still to be read: the firm has it, and its rows go once they stand in import_row',
  forecast_draft: 'half a forecast run; the run begins again',
  plan_proposal: 'a plan for the next days, out of date within hours; what was taken over of it is on the day sheets',
  search_token: 'made again from names and addresses',
  'membership.id': 'known by company and person',
  'membership.company_id': 'the company of the archive',
  'person.email_verified': 'says something of sign-in here, which begins anew elsewhere',
  'person.image': 'nothing is ever put there',
  'person.two_factor_enabled': 'of sign-in here',
  'person.created_at': 'of sign-in here',
  'person.updated_at': 'of sign-in here',
} satisfies Partial<Record<TenantTable | Identity | `${string}.${string}`, string>>
/** Tables of sign-in: secrets, or what happened at the doors. None leaves. */
export const SECRET: readonly Identity[] = [
  'session',
  'account',
  'verification',
  'request_window',
  'sign_in_guard',
  'identity_event',
  'one_time_link',
  'two_factor',
  'passkey',
]
