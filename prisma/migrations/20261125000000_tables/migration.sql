-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "customer" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "reference" TEXT,
    "notes" TEXT,
    "match_key" TEXT,
    "batch_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "customer_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "contact" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "customer_id" UUID NOT NULL,
    "site_id" UUID,
    "role" TEXT NOT NULL,
    "name" TEXT,
    "phone" TEXT,
    "email" TEXT,
    "batch_id" UUID,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "contact_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "consent" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "contact_id" UUID NOT NULL,
    "channel" TEXT NOT NULL,
    "granted" BOOLEAN NOT NULL,
    "source" TEXT NOT NULL,
    "since_day" DATE NOT NULL,

    CONSTRAINT "consent_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "site" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "label" TEXT NOT NULL,
    "street" TEXT,
    "town" TEXT,
    "region" TEXT,
    "postcode" TEXT,
    "latitude" DOUBLE PRECISION,
    "longitude" DOUBLE PRECISION,
    "access_notes" TEXT,
    "notes" TEXT,
    "water_supply_id" UUID,
    "match_key" TEXT,
    "batch_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "site_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "tenure" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "site_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "from_day" DATE,
    "to_day" DATE,

    CONSTRAINT "tenure_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "search_token" (
    "company_id" UUID NOT NULL,
    "token" TEXT NOT NULL,
    "site_id" UUID NOT NULL,

    CONSTRAINT "search_token_pkey" PRIMARY KEY ("company_id","token","site_id")
);

-- CreateTable
CREATE TABLE "forecast_run" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "cause" TEXT NOT NULL,
    "as_of_day" DATE NOT NULL,
    "parameters_version" TEXT NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "finished_at" TIMESTAMPTZ(3),
    "beds" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "forecast_run_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "bed_forecast" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "bed_id" UUID NOT NULL,
    "site_id" UUID NOT NULL,
    "water_supply_id" UUID,
    "run_id" UUID NOT NULL,
    "as_of_day" DATE NOT NULL,
    "computed_at" TIMESTAMPTZ(3) NOT NULL,
    "due10_day" DATE,
    "due50_day" DATE,
    "due90_day" DATE,
    "chance_3_months" DOUBLE PRECISION,
    "chance_12_months" DOUBLE PRECISION,
    "chance_24_months" DOUBLE PRECISION,
    "began_middle_day" DATE,
    "weakness" DOUBLE PRECISION NOT NULL DEFAULT 0,
    "month_chances" DOUBLE PRECISION[],
    "drivers" JSONB NOT NULL,
    "assumptions" JSONB NOT NULL,
    "missing" JSONB NOT NULL,
    "refusal" TEXT,

    CONSTRAINT "bed_forecast_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "forecast_change" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "bed_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "from_due50" DATE,
    "to_due50" DATE,
    "cause" TEXT NOT NULL,

    CONSTRAINT "forecast_change_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "forecast_month" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "water_supply_id" UUID,
    "month" DATE NOT NULL,
    "mean" DOUBLE PRECISION NOT NULL,
    "low" DOUBLE PRECISION NOT NULL,
    "middle" DOUBLE PRECISION NOT NULL,
    "high" DOUBLE PRECISION NOT NULL,
    "beds" INTEGER NOT NULL,

    CONSTRAINT "forecast_month_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "company" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "unit_system" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "company_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "membership_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" UUID NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "token" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,
    "ip_address" TEXT,
    "user_agent" TEXT,
    "user_id" UUID NOT NULL,
    "active_company_id" UUID,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account" (
    "id" UUID NOT NULL,
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "user_id" UUID NOT NULL,
    "access_token" TEXT,
    "refresh_token" TEXT,
    "id_token" TEXT,
    "access_token_expires_at" TIMESTAMPTZ(3),
    "refresh_token_expires_at" TIMESTAMPTZ(3),
    "scope" TEXT,
    "password" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verification" (
    "id" UUID NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "last_request" BIGINT NOT NULL,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "request_window" (
    "key" TEXT NOT NULL,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "count" INTEGER NOT NULL,

    CONSTRAINT "request_window_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "import_batch" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "file_name" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "header_line" INTEGER NOT NULL,
    "header" TEXT[],
    "mapping" JSONB NOT NULL,
    "total_rows" INTEGER NOT NULL,
    "done_rows" INTEGER NOT NULL DEFAULT 0,
    "counts" JSONB NOT NULL DEFAULT '{}',
    "failure" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "applied_at" TIMESTAMPTZ(3),
    "created_by" UUID NOT NULL,

    CONSTRAINT "import_batch_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "import_row" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "line" INTEGER NOT NULL,
    "cells" TEXT[],
    "status" TEXT NOT NULL,
    "problems" JSONB NOT NULL DEFAULT '[]',
    "notes" JSONB NOT NULL DEFAULT '[]',
    "customer_id" UUID,
    "site_id" UUID,
    "softener_id" UUID,
    "before" JSONB,

    CONSTRAINT "import_row_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "colleague" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "person_id" UUID,
    "name" TEXT NOT NULL,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "colleague_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "vehicle" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "volume_ft3" DOUBLE PRECISION NOT NULL,
    "weight_lb" DOUBLE PRECISION NOT NULL,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "vehicle_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "crew_day" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "day" DATE NOT NULL,
    "name" TEXT NOT NULL,
    "vehicle_id" UUID,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "notes" TEXT,

    CONSTRAINT "crew_day_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "crew_day_member" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "crew_day_id" UUID NOT NULL,
    "colleague_id" UUID NOT NULL,

    CONSTRAINT "crew_day_member_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "job" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "site_id" UUID NOT NULL,
    "softener_id" UUID,
    "bed_id" UUID,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "due_earliest" DATE,
    "due_latest" DATE,
    "minutes" INTEGER NOT NULL,
    "crew_size" INTEGER NOT NULL,
    "notes" TEXT,
    "state_reason" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "closed_day" DATE,

    CONSTRAINT "job_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "visit" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "job_id" UUID NOT NULL,
    "crew_day_id" UUID NOT NULL,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "state" TEXT NOT NULL,
    "outcome" TEXT,
    "close_out" JSONB,
    "notes" TEXT,
    "closed_at" TIMESTAMPTZ(3),
    "closed_by" UUID,

    CONSTRAINT "visit_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "assignment" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "visit_id" UUID NOT NULL,
    "colleague_id" UUID NOT NULL,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "released" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "assignment_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "vehicle_use" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "visit_id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "released" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "vehicle_use_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "reminder" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "bed_id" UUID NOT NULL,
    "site_id" UUID NOT NULL,
    "contact_id" UUID NOT NULL,
    "channel" TEXT NOT NULL,
    "notice" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "state_reason" TEXT,
    "due_earliest" DATE,
    "due_latest" DATE,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "reminder_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "message" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "reminder_id" UUID,
    "contact_id" UUID NOT NULL,
    "channel" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "message_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "softener" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "site_id" UUID NOT NULL,
    "label" TEXT NOT NULL,
    "location" TEXT,
    "arrangement" TEXT NOT NULL DEFAULT 'single',
    "installed_earliest" DATE,
    "installed_latest" DATE,
    "installed_as_written" TEXT,
    "people_served" INTEGER,
    "notes" TEXT,
    "match_key" TEXT,
    "batch_id" UUID,
    "condemned_day" DATE,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "softener_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "tank" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "softener_id" UUID,
    "position" INTEGER NOT NULL DEFAULT 1,
    "diameter_in" DOUBLE PRECISION,
    "height_in" DOUBLE PRECISION,
    "nominal_grains" INTEGER,
    "size_as_written" TEXT,
    "fact_sources" JSONB NOT NULL DEFAULT '{}',
    "batch_id" UUID,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "tank_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "valve" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "softener_id" UUID NOT NULL,
    "tank_id" UUID,
    "label" TEXT NOT NULL,
    "control" TEXT NOT NULL DEFAULT 'unknown',
    "backwash_gpm" DOUBLE PRECISION,
    "tube_od_in" DOUBLE PRECISION,
    "notes" TEXT,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "valve_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "brine_tank" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "softener_id" UUID NOT NULL,
    "label" TEXT NOT NULL,
    "notes" TEXT,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "brine_tank_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "pre_treatment" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "softener_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "from_day" DATE,
    "to_day" DATE,
    "source" TEXT NOT NULL,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "pre_treatment_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "bed" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "tank_id" UUID NOT NULL,
    "resin_kind" TEXT NOT NULL DEFAULT 'unknown',
    "volume_ft3" DOUBLE PRECISION,
    "gravel_lb" DOUBLE PRECISION,
    "tube_cut_in" DOUBLE PRECISION,
    "began_earliest" DATE,
    "began_latest" DATE,
    "began_as_written" TEXT,
    "last_seen_day" DATE,
    "ended_earliest" DATE,
    "ended_latest" DATE,
    "end_cause" TEXT,
    "entered" JSONB NOT NULL DEFAULT '{}',
    "fact_sources" JSONB NOT NULL DEFAULT '{}',
    "began_visit_id" UUID,
    "ended_visit_id" UUID,
    "batch_id" UUID,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "bed_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "inspection" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "bed_id" UUID NOT NULL,
    "visit_id" UUID,
    "day" DATE NOT NULL,
    "capacity_share" DOUBLE PRECISION,
    "pressure_drop_psi" DOUBLE PRECISION,
    "moisture_share" DOUBLE PRECISION,
    "bead_condition" TEXT,
    "notes" TEXT,
    "source" TEXT NOT NULL,

    CONSTRAINT "inspection_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "stock_item" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "bag_ft3" DOUBLE PRECISION,
    "resin_kind" TEXT,
    "on_hand" DOUBLE PRECISION NOT NULL DEFAULT 0,
    "price_minor" INTEGER,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "stock_item_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "movement" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "stock_item_id" UUID NOT NULL,
    "quantity" DOUBLE PRECISION NOT NULL,
    "reason" TEXT NOT NULL,
    "visit_id" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "person_id" UUID,

    CONSTRAINT "movement_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "discrepancy" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "stock_item_id" UUID NOT NULL,
    "movement_id" UUID NOT NULL,
    "expected" DOUBLE PRECISION NOT NULL,
    "found" DOUBLE PRECISION NOT NULL,
    "opened_at" TIMESTAMPTZ(3) NOT NULL,
    "settled_at" TIMESTAMPTZ(3),

    CONSTRAINT "discrepancy_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "applied_command" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "operation" TEXT NOT NULL,
    "body_hash" TEXT NOT NULL,
    "answer" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "applied_command_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "person_id" UUID,
    "command_id" UUID,
    "operation" TEXT NOT NULL,
    "entity" TEXT NOT NULL,
    "entity_id" UUID NOT NULL,
    "detail" JSONB NOT NULL,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "company_settings" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "reminder_lead_days" INTEGER NOT NULL DEFAULT 60,
    "rebeds_per_month" INTEGER NOT NULL DEFAULT 10,
    "bag_sizes_ft3" DOUBLE PRECISION[] DEFAULT ARRAY[1, 0.5, 0.25]::DOUBLE PRECISION[],
    "day_start_minute" INTEGER NOT NULL DEFAULT 480,
    "day_end_minute" INTEGER NOT NULL DEFAULT 1020,

    CONSTRAINT "company_settings_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "water_supply" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "notes" TEXT,
    "batch_id" UUID,
    "archived_at" TIMESTAMPTZ(3),

    CONSTRAINT "water_supply_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "supply_period" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "water_supply_id" UUID NOT NULL,
    "from_day" DATE,
    "disinfectant" TEXT NOT NULL,
    "residual_mg_l" DOUBLE PRECISION,
    "hardness_gpg" DOUBLE PRECISION,
    "iron_mg_l" DOUBLE PRECISION,
    "temperature_c" DOUBLE PRECISION,
    "entered" JSONB NOT NULL,
    "source" TEXT NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "supply_period_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "water_test" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "site_id" UUID NOT NULL,
    "softener_id" UUID,
    "visit_id" UUID,
    "day" DATE NOT NULL,
    "point" TEXT NOT NULL,
    "hardness_gpg" DOUBLE PRECISION,
    "free_chlorine_mg_l" DOUBLE PRECISION,
    "total_chlorine_mg_l" DOUBLE PRECISION,
    "iron_mg_l" DOUBLE PRECISION,
    "manganese_mg_l" DOUBLE PRECISION,
    "ph" DOUBLE PRECISION,
    "dissolved_solids_mg_l" DOUBLE PRECISION,
    "temperature_c" DOUBLE PRECISION,
    "entered" JSONB NOT NULL,
    "source" TEXT NOT NULL,
    "batch_id" UUID,
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "water_test_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE INDEX "customer_company_id_name_id_idx" ON "customer"("company_id", "name", "id");

-- CreateIndex
CREATE INDEX "contact_company_id_customer_id_idx" ON "contact"("company_id", "customer_id");

-- CreateIndex
CREATE INDEX "contact_company_id_site_id_idx" ON "contact"("company_id", "site_id");

-- CreateIndex
CREATE UNIQUE INDEX "consent_company_id_contact_id_channel_key" ON "consent"("company_id", "contact_id", "channel");

-- CreateIndex
CREATE INDEX "site_company_id_label_id_idx" ON "site"("company_id", "label", "id");

-- CreateIndex
CREATE INDEX "site_company_id_water_supply_id_idx" ON "site"("company_id", "water_supply_id");

-- CreateIndex
CREATE INDEX "tenure_company_id_site_id_idx" ON "tenure"("company_id", "site_id");

-- CreateIndex
CREATE INDEX "tenure_company_id_customer_id_idx" ON "tenure"("company_id", "customer_id");

-- CreateIndex
CREATE INDEX "search_token_company_id_site_id_idx" ON "search_token"("company_id", "site_id");

-- CreateIndex
CREATE INDEX "forecast_run_company_id_started_at_idx" ON "forecast_run"("company_id", "started_at");

-- CreateIndex
CREATE INDEX "bed_forecast_company_id_chance_12_months_id_idx" ON "bed_forecast"("company_id", "chance_12_months", "id");

-- CreateIndex
CREATE INDEX "bed_forecast_company_id_due50_day_id_idx" ON "bed_forecast"("company_id", "due50_day", "id");

-- CreateIndex
CREATE INDEX "bed_forecast_company_id_weakness_id_idx" ON "bed_forecast"("company_id", "weakness", "id");

-- CreateIndex
CREATE INDEX "bed_forecast_company_id_site_id_idx" ON "bed_forecast"("company_id", "site_id");

-- CreateIndex
CREATE UNIQUE INDEX "bed_forecast_company_id_bed_id_key" ON "bed_forecast"("company_id", "bed_id");

-- CreateIndex
CREATE INDEX "forecast_change_company_id_bed_id_at_idx" ON "forecast_change"("company_id", "bed_id", "at");

-- CreateIndex
CREATE INDEX "forecast_month_company_id_month_idx" ON "forecast_month"("company_id", "month");

-- CreateIndex
CREATE UNIQUE INDEX "person_email_key" ON "person"("email");

-- CreateIndex
CREATE INDEX "membership_company_id_idx" ON "membership"("company_id");

-- CreateIndex
CREATE UNIQUE INDEX "membership_person_id_company_id_key" ON "membership"("person_id", "company_id");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_key" ON "session"("token");

-- CreateIndex
CREATE INDEX "session_user_id_idx" ON "session"("user_id");

-- CreateIndex
CREATE INDEX "account_user_id_idx" ON "account"("user_id");

-- CreateIndex
CREATE INDEX "verification_identifier_idx" ON "verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "rate_limit_key_key" ON "rate_limit"("key");

-- CreateIndex
CREATE INDEX "import_batch_company_id_created_at_idx" ON "import_batch"("company_id", "created_at");

-- CreateIndex
CREATE INDEX "import_row_company_id_site_id_idx" ON "import_row"("company_id", "site_id");

-- CreateIndex
CREATE UNIQUE INDEX "import_row_company_id_batch_id_line_key" ON "import_row"("company_id", "batch_id", "line");

-- CreateIndex
CREATE UNIQUE INDEX "colleague_company_id_person_id_key" ON "colleague"("company_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "crew_day_company_id_day_name_key" ON "crew_day"("company_id", "day", "name");

-- CreateIndex
CREATE INDEX "crew_day_member_company_id_colleague_id_idx" ON "crew_day_member"("company_id", "colleague_id");

-- CreateIndex
CREATE UNIQUE INDEX "crew_day_member_company_id_crew_day_id_colleague_id_key" ON "crew_day_member"("company_id", "crew_day_id", "colleague_id");

-- CreateIndex
CREATE INDEX "job_company_id_site_id_idx" ON "job"("company_id", "site_id");

-- CreateIndex
CREATE INDEX "job_company_id_bed_id_idx" ON "job"("company_id", "bed_id");

-- CreateIndex
CREATE INDEX "job_company_id_state_due_latest_id_idx" ON "job"("company_id", "state", "due_latest", "id");

-- CreateIndex
CREATE INDEX "visit_company_id_job_id_idx" ON "visit"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "visit_company_id_crew_day_id_starts_at_idx" ON "visit"("company_id", "crew_day_id", "starts_at");

-- CreateIndex
CREATE INDEX "assignment_company_id_visit_id_idx" ON "assignment"("company_id", "visit_id");

-- CreateIndex
CREATE INDEX "vehicle_use_company_id_visit_id_idx" ON "vehicle_use"("company_id", "visit_id");

-- CreateIndex
CREATE INDEX "reminder_company_id_state_due_earliest_id_idx" ON "reminder"("company_id", "state", "due_earliest", "id");

-- CreateIndex
CREATE UNIQUE INDEX "reminder_company_id_bed_id_notice_key" ON "reminder"("company_id", "bed_id", "notice");

-- CreateIndex
CREATE INDEX "message_company_id_state_created_at_id_idx" ON "message"("company_id", "state", "created_at", "id");

-- CreateIndex
CREATE INDEX "softener_company_id_site_id_idx" ON "softener"("company_id", "site_id");

-- CreateIndex
CREATE INDEX "tank_company_id_softener_id_idx" ON "tank"("company_id", "softener_id");

-- CreateIndex
CREATE INDEX "valve_company_id_softener_id_idx" ON "valve"("company_id", "softener_id");

-- CreateIndex
CREATE INDEX "brine_tank_company_id_softener_id_idx" ON "brine_tank"("company_id", "softener_id");

-- CreateIndex
CREATE INDEX "pre_treatment_company_id_softener_id_idx" ON "pre_treatment"("company_id", "softener_id");

-- CreateIndex
CREATE INDEX "bed_company_id_tank_id_idx" ON "bed"("company_id", "tank_id");

-- CreateIndex
CREATE INDEX "inspection_company_id_bed_id_day_idx" ON "inspection"("company_id", "bed_id", "day");

-- CreateIndex
CREATE UNIQUE INDEX "stock_item_company_id_name_key" ON "stock_item"("company_id", "name");

-- CreateIndex
CREATE INDEX "movement_company_id_stock_item_id_at_idx" ON "movement"("company_id", "stock_item_id", "at");

-- CreateIndex
CREATE INDEX "movement_company_id_visit_id_idx" ON "movement"("company_id", "visit_id");

-- CreateIndex
CREATE INDEX "discrepancy_company_id_stock_item_id_idx" ON "discrepancy"("company_id", "stock_item_id");

-- CreateIndex
CREATE INDEX "audit_entry_company_id_entity_entity_id_at_idx" ON "audit_entry"("company_id", "entity", "entity_id", "at");

-- CreateIndex
CREATE UNIQUE INDEX "company_settings_company_id_key" ON "company_settings"("company_id");

-- CreateIndex
CREATE UNIQUE INDEX "water_supply_company_id_name_key" ON "water_supply"("company_id", "name");

-- CreateIndex
CREATE INDEX "supply_period_company_id_water_supply_id_from_day_idx" ON "supply_period"("company_id", "water_supply_id", "from_day");

-- CreateIndex
CREATE INDEX "water_test_company_id_site_id_day_idx" ON "water_test"("company_id", "site_id", "day");

-- AddForeignKey
ALTER TABLE "contact" ADD CONSTRAINT "contact_company_id_customer_id_fkey" FOREIGN KEY ("company_id", "customer_id") REFERENCES "customer"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "contact" ADD CONSTRAINT "contact_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "consent" ADD CONSTRAINT "consent_company_id_contact_id_fkey" FOREIGN KEY ("company_id", "contact_id") REFERENCES "contact"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "site" ADD CONSTRAINT "site_company_id_water_supply_id_fkey" FOREIGN KEY ("company_id", "water_supply_id") REFERENCES "water_supply"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tenure" ADD CONSTRAINT "tenure_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tenure" ADD CONSTRAINT "tenure_company_id_customer_id_fkey" FOREIGN KEY ("company_id", "customer_id") REFERENCES "customer"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "search_token" ADD CONSTRAINT "search_token_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site"("company_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "bed_forecast" ADD CONSTRAINT "bed_forecast_company_id_bed_id_fkey" FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "bed_forecast" ADD CONSTRAINT "bed_forecast_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "bed_forecast" ADD CONSTRAINT "bed_forecast_company_id_run_id_fkey" FOREIGN KEY ("company_id", "run_id") REFERENCES "forecast_run"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "forecast_change" ADD CONSTRAINT "forecast_change_company_id_bed_id_fkey" FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "forecast_change" ADD CONSTRAINT "forecast_change_company_id_run_id_fkey" FOREIGN KEY ("company_id", "run_id") REFERENCES "forecast_run"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "forecast_month" ADD CONSTRAINT "forecast_month_company_id_run_id_fkey" FOREIGN KEY ("company_id", "run_id") REFERENCES "forecast_run"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "account" ADD CONSTRAINT "account_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import_row" ADD CONSTRAINT "import_row_company_id_batch_id_fkey" FOREIGN KEY ("company_id", "batch_id") REFERENCES "import_batch"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "crew_day" ADD CONSTRAINT "crew_day_company_id_vehicle_id_fkey" FOREIGN KEY ("company_id", "vehicle_id") REFERENCES "vehicle"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "crew_day_member" ADD CONSTRAINT "crew_day_member_company_id_crew_day_id_fkey" FOREIGN KEY ("company_id", "crew_day_id") REFERENCES "crew_day"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "crew_day_member" ADD CONSTRAINT "crew_day_member_company_id_colleague_id_fkey" FOREIGN KEY ("company_id", "colleague_id") REFERENCES "colleague"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_company_id_softener_id_fkey" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_company_id_bed_id_fkey" FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visit" ADD CONSTRAINT "visit_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visit" ADD CONSTRAINT "visit_company_id_crew_day_id_fkey" FOREIGN KEY ("company_id", "crew_day_id") REFERENCES "crew_day"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assignment" ADD CONSTRAINT "assignment_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assignment" ADD CONSTRAINT "assignment_company_id_colleague_id_fkey" FOREIGN KEY ("company_id", "colleague_id") REFERENCES "colleague"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle_use" ADD CONSTRAINT "vehicle_use_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle_use" ADD CONSTRAINT "vehicle_use_company_id_vehicle_id_fkey" FOREIGN KEY ("company_id", "vehicle_id") REFERENCES "vehicle"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reminder" ADD CONSTRAINT "reminder_company_id_bed_id_fkey" FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reminder" ADD CONSTRAINT "reminder_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reminder" ADD CONSTRAINT "reminder_company_id_contact_id_fkey" FOREIGN KEY ("company_id", "contact_id") REFERENCES "contact"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "message" ADD CONSTRAINT "message_company_id_reminder_id_fkey" FOREIGN KEY ("company_id", "reminder_id") REFERENCES "reminder"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "message" ADD CONSTRAINT "message_company_id_contact_id_fkey" FOREIGN KEY ("company_id", "contact_id") REFERENCES "contact"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "softener" ADD CONSTRAINT "softener_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tank" ADD CONSTRAINT "tank_company_id_softener_id_fkey" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "valve" ADD CONSTRAINT "valve_company_id_softener_id_fkey" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "valve" ADD CONSTRAINT "valve_company_id_tank_id_fkey" FOREIGN KEY ("company_id", "tank_id") REFERENCES "tank"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "brine_tank" ADD CONSTRAINT "brine_tank_company_id_softener_id_fkey" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pre_treatment" ADD CONSTRAINT "pre_treatment_company_id_softener_id_fkey" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "bed" ADD CONSTRAINT "bed_company_id_tank_id_fkey" FOREIGN KEY ("company_id", "tank_id") REFERENCES "tank"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "bed" ADD CONSTRAINT "bed_company_id_began_visit_id_fkey" FOREIGN KEY ("company_id", "began_visit_id") REFERENCES "visit"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "bed" ADD CONSTRAINT "bed_company_id_ended_visit_id_fkey" FOREIGN KEY ("company_id", "ended_visit_id") REFERENCES "visit"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection" ADD CONSTRAINT "inspection_company_id_bed_id_fkey" FOREIGN KEY ("company_id", "bed_id") REFERENCES "bed"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection" ADD CONSTRAINT "inspection_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "movement" ADD CONSTRAINT "movement_company_id_stock_item_id_fkey" FOREIGN KEY ("company_id", "stock_item_id") REFERENCES "stock_item"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "movement" ADD CONSTRAINT "movement_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "discrepancy" ADD CONSTRAINT "discrepancy_company_id_stock_item_id_fkey" FOREIGN KEY ("company_id", "stock_item_id") REFERENCES "stock_item"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "discrepancy" ADD CONSTRAINT "discrepancy_company_id_movement_id_fkey" FOREIGN KEY ("company_id", "movement_id") REFERENCES "movement"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "company_settings" ADD CONSTRAINT "company_settings_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supply_period" ADD CONSTRAINT "supply_period_company_id_water_supply_id_fkey" FOREIGN KEY ("company_id", "water_supply_id") REFERENCES "water_supply"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "water_test" ADD CONSTRAINT "water_test_company_id_site_id_fkey" FOREIGN KEY ("company_id", "site_id") REFERENCES "site"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "water_test" ADD CONSTRAINT "water_test_company_id_softener_id_fkey" FOREIGN KEY ("company_id", "softener_id") REFERENCES "softener"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "water_test" ADD CONSTRAINT "water_test_company_id_visit_id_fkey" FOREIGN KEY ("company_id", "visit_id") REFERENCES "visit"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;


