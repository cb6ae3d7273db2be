#include "engine/author/fields.hpp"

#include "engine/procedure/procedure.hpp"
#include "engine/reception/book.hpp"

namespace matula::author {

namespace {

using Kind = Field::Kind;
using scenario::range_measure;

Field needed(Field field) {
  field.needed = true;
  return field;
}

Field words(const char* key, const char* about, Kind kind = Kind::Words) {
  Field field;
  field.key = key;
  field.about = about;
  field.kind = kind;
  return field;
}

Field one_of(const char* key, const char* about, std::vector<std::string> allowed, Kind kind = Kind::OneOf) {
  Field field = words(key, about, kind);
  field.allowed = std::move(allowed);
  return field;
}

Field number(const char* key, const char* about, const strict::Range& range, Kind kind = Kind::Number) {
  Field field = words(key, about, kind);
  field.range = range;
  return field;
}

Field quantity(const char* key, const char* about, const scenario::Measure& measure) {
  Field field = words(key, about, Kind::Quantity);
  field.measure = measure;
  return field;
}

std::vector<std::string> figures_of_protein() {
  std::vector<std::string> tests;
  for (const auto& one : procedure::shipped_list()) {
    const auto& unit = one.number.unit;
    if (one.result == procedure::Result::Number && (unit == "mg/dL" || unit == "g/dL" || unit == "g/L")) {
      tests.push_back(one.key);
    }
  }
  return tests;
}

} // namespace

Fields collection_fields(const Shelf& shelf) {
  const auto& limits = *shelf.limits;
  const auto& book = reception::shipped_book().value();
  return {
      needed(words("number", "the patient's number on the form")),
      needed(one_of("request", "what is asked for", book.keys("request"), Kind::ListOf)),
      needed(one_of("kind", "what kind of specimen", book.keys("kind"))),
      needed(one_of("container", "what it came in", book.keys("container"))),
      needed(words("received", "the laboratory's stamp", Kind::Clock)),
      words("passed", "time of the void as written", Kind::Clock),
      words("start", "start of a 24-hour collection as written", Kind::Clock),
      words("stop", "end of a 24-hour collection as written", Kind::Clock),
      one_of("label", "where the label is (container)", {"container", "lid", "none"}),
      words("label_name", "as on the label; \"-\" when it is not written there (as on the form)",
            Kind::MaybeWords),
      words("label_number", "as on the label; \"-\" when it is not written there (as on the form)",
            Kind::MaybeWords),
      one_of("preservative", "on the label (none)", book.keys("preservative")),
      words("preservative_mislabelled", "the label is not true of the specimen, and that is the point",
            Kind::YesNo),
      words("time_miswritten", "the time is not true of the specimen, and that is the point", Kind::YesNo),
      one_of("storage", "on the way (room)", {"room", "refrigerated"}),
      one_of("contamination", "what else is in it (none)", book.keys("contamination")),
      words("leaking", "whether it leaks (false)", Kind::YesNo),
      quantity("volume", "what is in the container", range_measure(limits, "container_volume")),
      words("remark", "words on the form", Kind::MaybeWords),
      words("replaceable", "whether the patient can give another (true)", Kind::YesNo),
      quantity("weight", "body weight, for the 24-hour exercise", range_measure(limits, "body_weight")),
      one_of("sex", "for the 24-hour exercise", {"female", "male"}),
      one_of("protein_by", "the student's own figure of this test takes the place of the sheet's",
             figures_of_protein()),
  };
}

Fields void_fields(const scenario::Limits& limits) {
  return {
      needed(words("at", "when", Kind::Clock)),
      needed(quantity("volume", "how much", range_measure(limits, "void"))),
      words("kept", "whether it went into the bottle (true)", Kind::YesNo),
      one_of("bottle", "which bottle, where two are compared", {"whole", "day", "night"}),
      quantity("protein", "its protein, when not the specimen's", range_measure(limits, "day_protein")),
      quantity("creatinine", "its creatinine, when not the specimen's",
               range_measure(limits, "day_creatinine")),
  };
}

Fields rules_fields(const scenario::Limits& limits) {
  const auto& solute = limits.ranges.at("solute_rule");
  return {
      quantity("one_division_per", "0.001 for every so many degrees (3 C)",
               range_measure(limits, "per_degrees")),
      number("protein_per_g_dl", "taken off for each g/dL (0.003)", solute),
      number("glucose_per_g_dl", "taken off for each g/dL (0.004)", solute),
  };
}

Fields weights_fields(const scenario::Limits& limits) {
  const auto& weight = limits.ranges.at("weight");
  return {
      number("each_grade", "each graded test (20)", weight, Kind::Whole),
      number("each_look", "each of colour, clarity, odour (5)", weight, Kind::Whole),
      number("specific_gravity", "reading and calculation together (20)", weight, Kind::Whole),
      number("procedure", "shared out over the parts (20)", weight, Kind::Whole),
  };
}

Fields tolerances_fields(const scenario::Limits& limits) {
  const auto& gravity = limits.ranges.at("gravity_tolerance");
  const auto degrees = range_measure(limits, "temperature_tolerance");
  return {
      number("specific_gravity_full", "full marks up to this error (0.001)", gravity),
      number("specific_gravity_none", "none from this error on (0.003)", gravity),
      quantity("temperature_full", "full marks up to this error (1 C)", degrees),
      quantity("temperature_none", "none from this error on (3 C)", degrees),
  };
}

Fields marking_fields() {
  const strict::Range per_mille{0, 1000, "per mille"};
  Field loss = number("loss", "per mille lost for 0 to 5 grades off", per_mille, Kind::Numbers);
  loss.count = 6;
  return {
      loss,
      number("missed_finding", "lost besides when a finding was read as negative, per mille", per_mille,
             Kind::Whole),
      number("false_alarm", "lost besides when a negative tube was reported, per mille", per_mille,
             Kind::Whole),
      number("reader_spread", "how far apart trained readers lie, grades", {0.01, 2, "grades"}),
      number("pass_mark", "mean of the graded readings to pass, per mille", per_mille, Kind::Whole),
      number("missed_findings", "findings that may be missed in a passed sitting", {0, 100, "findings"},
             Kind::Whole),
  };
}

} // namespace matula::author
