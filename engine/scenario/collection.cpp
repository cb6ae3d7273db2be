#include "engine/procedure/procedure.hpp"
#include "engine/reception/book.hpp"
#include "engine/reception/day.hpp"
#include "engine/scenario/parts.hpp"

#include <algorithm>
#include <cmath>

namespace matula::scenario {

namespace {

using reception::Book;
using reception::DayRecord;
using reception::Delivery;

constexpr double g_per_l_of_mg_per_dl = 0.01;

/// A clock time under `key`; nothing when it is not there or wrong.
std::optional<int> read_clock(const strict::Table& table, const std::string& key) {
  if (!table.has(key)) {
    return std::nullopt;
  }
  const auto time = reception::clock_from_text(table.text(key));
  if (!time) {
    table.complain(key, "a time such as \"07:40\", or \"07:40 day 2\" for the next day");
  }
  return time;
}

/// What the label says under `key`: as on the form when left out, nothing for "-".
std::optional<std::string> read_label(const strict::Table& table, const std::string& key,
                                      const std::string& form) {
  const std::string written = table.text_or(key, form);
  return written == "-" ? std::nullopt : std::optional<std::string>(written);
}

/// g/L of the species together.
double in_specimen(const specimen::Specimen& specimen, const std::vector<std::string>& species) {
  double mg_per_dl = 0;
  for (const auto& [key, amount] : specimen.mg_per_dl) {
    mg_per_dl += std::find(species.begin(), species.end(), key) == species.end() ? 0 : amount;
  }
  return mg_per_dl * g_per_l_of_mg_per_dl;
}

reception::Void read_void(const strict::Table& row, const Limits& limits, const Book& book,
                          const specimen::Specimen& specimen) {
  reception::Void one;
  if (!row.has("at")) {
    row.complain("at", "the time of the void: at = \"07:40\"");
  }
  one.at_min = read_clock(row, "at").value_or(0);
  one.volume_ml = read_quantity(row, "volume", range_measure(limits, "void")).value_or(100);
  one.kept = row.boolean_or("kept", true);
  one.bottle = row.word_or("bottle", {"whole", "day", "night"}, "whole");
  one.protein_g_per_l = quantity_or(row, "protein", range_measure(limits, "day_protein"),
                                    in_specimen(specimen, book.day.proteins));
  one.creatinine_g_per_l = quantity_or(row, "creatinine", range_measure(limits, "day_creatinine"),
                                       in_specimen(specimen, {book.day.creatinine}));
  return one;
}

void check_voids(const std::vector<strict::Table>& rows, const DayRecord& day) {
  constexpr std::size_t most_voids = 24;
  for (std::size_t i = 1; i < day.voids.size(); ++i) {
    if (day.voids[i].at_min <= day.voids[i - 1].at_min) {
      rows[i].complain("at", "a time after that of the void before");
    }
    const bool back = day.voids[i - 1].bottle == "night" && day.voids[i].bottle == "day";
    if (back || (day.voids[i].bottle == "whole") != (day.voids[i - 1].bottle == "whole")) {
      rows[i].complain("bottle",
                       "\"day\" for every void up to lying down, then \"night\"; or neither for all");
    }
  }
  if (day.voids.size() > most_voids) {
    rows[most_voids].complain("at", "no more than 24 voids");
  }
  const auto kept =
      std::count_if(day.voids.begin(), day.voids.end(), [](const auto& one) { return one.kept; });
  if (kept == 0) {
    rows.front().complain("kept", "at least one void that went into the bottle");
  }
}

/// The aliquot on the bench must be what the voids make together.
void check_mixture(const strict::Table& row, const DayRecord& day, const Book& book,
                   const specimen::Specimen& specimen) {
  constexpr double allowed_share = 0.1;
  constexpr double allowed_g_per_l = 0.02;
  if (day.pair()) {
    return; // The bench has one of the two bottles.
  }
  const double bench = in_specimen(specimen, book.day.proteins);
  const double bottle = reception::bottles_of(day).front().protein_g_per_l;
  if (std::abs(bench - bottle) > std::max(allowed_g_per_l, allowed_share * bottle)) {
    row.complain("protein", "voids that together make the specimen's protein: it has " +
                                std::to_string(bench) + " g/L, the bottle " + std::to_string(bottle) +
                                " g/L");
  }
}

/// protein_by = "turbidity": the learner's own figure of that test takes the place of the sheet's.
void read_own_protein(const strict::Table& table, DayRecord& day) {
  const std::map<std::string, double> g_per_l_of{{"g/L", 1}, {"g/dL", 10}, {"mg/dL", g_per_l_of_mg_per_dl}};
  std::vector<std::string> tests;
  for (const auto& one : procedure::shipped_list()) {
    if (one.result == procedure::Result::Number && g_per_l_of.count(one.number.unit) > 0) {
      tests.push_back(one.key);
    }
  }
  if (!table.has("protein_by")) {
    return;
  }
  const auto* test = procedure::find_shipped(table.word("protein_by", tests));
  if (test == nullptr || test->result != procedure::Result::Number) {
    return;
  }
  if (day.pair()) {
    table.complain("protein_by", "one bottle: of two, the bench has only one");
  }
  day.protein_item = test->item();
  day.protein_unit = test->number.unit;
  const auto factor = g_per_l_of.find(test->number.unit);
  day.protein_g_per_l_of_unit = factor == g_per_l_of.end() ? 1 : factor->second;
}

std::optional<DayRecord> read_day(const strict::Table& table, const Limits& limits, const Book& book,
                                  const specimen::Specimen& specimen, const Delivery& delivery) {
  const auto rows = table.tables_or_none("void");
  if (rows.empty()) {
    return std::nullopt;
  }
  DayRecord day;
  if (delivery.kind != "day") {
    table.complain("kind", "\"day\", because there are voids");
  }
  if (!delivery.start_min || !delivery.stop_min) {
    table.complain(delivery.start_min ? "stop" : "start", "the time as written, because there are voids");
  }
  day.start_min = delivery.start_min.value_or(0);
  day.stop_min = delivery.stop_min.value_or(day.start_min);
  day.weight_kg =
      read_quantity(table, "weight", range_measure(limits, "body_weight")).value_or(day.weight_kg);
  day.sex = table.word("sex", {"female", "male"});
  for (const strict::Table& row : rows) {
    day.voids.push_back(read_void(row, limits, book, specimen));
  }
  check_voids(rows, day);
  read_own_protein(table, day);
  check_mixture(rows.front(), day, book, specimen);
  return day;
}

void read_times(const strict::Table& table, Delivery& delivery) {
  delivery.passed_min = read_clock(table, "passed");
  delivery.start_min = read_clock(table, "start");
  delivery.stop_min = read_clock(table, "stop");
  if (!table.has("received")) {
    table.complain("received", "the time of the laboratory's stamp: received = \"08:10\"");
  }
  const auto received = read_clock(table, "received");
  delivery.received_min = received.value_or(0);
  const auto& last = delivery.kind == "day" ? delivery.stop_min : delivery.passed_min;
  if (last && received && *received < *last) {
    table.complain("received", "a time after the urine was passed; write \"07:40 day 2\" for the next day");
  }
  if (delivery.start_min && delivery.stop_min && *delivery.stop_min <= *delivery.start_min) {
    table.complain("stop", "a time after the start; write \"07:00 day 2\" for the next day");
  }
}

void read_form(const strict::Table& table, const Book& book, const Patient& patient, Delivery& delivery) {
  delivery.form_name = patient.name;
  delivery.form_number = table.text("number");
  delivery.age_sex = patient.age_sex;
  delivery.ward = patient.ward;
  delivery.question = patient.request;
  delivery.remark = table.text_or("remark", "");
  delivery.requests = table.words("request", book.keys("request"));
  if (table.has("request") && table.texts_or_none("request").empty()) {
    table.complain("request", "at least one thing that is asked for");
  }
  delivery.kind = table.word("kind", book.keys("kind"));
  delivery.replaceable = table.boolean_or("replaceable", true);
}

void read_container(const strict::Table& table, const Limits& limits, const Book& book, double specimen_ml,
                    Delivery& delivery) {
  delivery.label = table.word_or("label", {"container", "lid", "none"}, "container");
  delivery.label_name = read_label(table, "label_name", delivery.form_name);
  delivery.label_number = read_label(table, "label_number", delivery.form_number);
  delivery.label_preservative = table.word_or("preservative", book.keys("preservative"), "none");
  delivery.container = table.word("container", book.keys("container"));
  delivery.storage = table.word_or("storage", {"room", "refrigerated"}, "room");
  delivery.contamination = table.word_or("contamination", book.keys("contamination"), "none");
  delivery.leaking = table.boolean_or("leaking", false);
  delivery.volume_ml = quantity_or(table, "volume", range_measure(limits, "container_volume"), specimen_ml);
}

} // namespace

std::optional<Delivery> read_collection(const strict::Table& root, const Limits& limits,
                                        const Patient& patient, const specimen::Specimen& specimen) {
  const auto table = root.table_if_any("collection");
  const auto& book = reception::shipped_book();
  if (!table || !book) {
    return std::nullopt;
  }
  Delivery delivery;
  read_form(*table, *book, patient, delivery);
  read_times(*table, delivery);
  read_container(*table, limits, *book, specimen.volume_ml, delivery);
  check_collection(*table, delivery, specimen);
  delivery.day = read_day(*table, limits, *book, specimen, delivery);
  if (delivery.day) {
    const auto bottles = reception::bottles_of(*delivery.day);
    delivery.volume_ml = 0;
    for (const auto& bottle : bottles) {
      delivery.volume_ml += bottle.volume_ml;
    }
  }
  return delivery;
}

} // namespace matula::scenario
