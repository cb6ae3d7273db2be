#include "engine/author/schema_parts.hpp"

#include "engine/assets/world.hpp"
#include "engine/procedure/procedure.hpp"
#include "engine/reception/book.hpp"

#include <limits>

namespace matula::author {

namespace {

using scenario::Limit;
using scenario::Measure;
using scenario::range_measure;

std::string plain_name(std::string key) {
  for (char& letter : key) {
    letter = letter == '_' ? ' ' : letter;
  }
  return key;
}

Json dissolved(const Shelf& shelf) {
  Json properties = Json::object();
  for (const Limit& limit : shelf.limits->dissolved) {
    if (const auto id = shelf.world->catalogue.find_species(limit.key)) {
      const double molar_mass = shelf.world->catalogue.species[*id].molar_mass_g_per_mol;
      properties[limit.key] = quantity(plain_name(limit.key), scenario::dissolved_measure(limit, molar_mass));
    }
  }
  return table("What is dissolved in the urine. Chloride is not listed: it balances the charges.", properties,
               {});
}

Json particles(const Shelf& shelf, const std::string& about, const std::vector<Limit>& limits,
               Measure (*measure)(const Limit&)) {
  Json properties = Json::object();
  for (const Limit& limit : limits) {
    if (shelf.world->catalogue.find_particle(limit.key)) {
      properties[limit.key] = quantity(plain_name(limit.key), measure(limit));
    }
  }
  return table(about, properties, {});
}

Measure cells(const Limit& limit) {
  return {{{"/uL", 1}, {"/µL", 1}, {"/mL", 1e-3}, {"/L", 1e-6}}, 0, limit.highest};
}

Measure organisms(const Limit& limit) {
  return {{{"/mL", 1}, {"/uL", 1e3}, {"/µL", 1e3}, {"/L", 1e-3}}, 0, limit.highest};
}

/// Grams of a powder are worth as many millilitres as its bottle says, which is not known here.
Json dose(const scenario::Limits& limits) {
  Measure by_volume = range_measure(limits, "dose");
  by_volume.units.push_back({"g", 0.01});
  return quantity("what was put in for each 100 mL", by_volume);
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

Json clock(const std::string& about) {
  Json time = words(about + ", such as \"07:40\" or \"07:40 day 2\"");
  time["pattern"] = "^([01][0-9]|2[0-3]):[0-5][0-9]( day [1-9])?$";
  return time;
}

Json voids(const scenario::Limits& limits) {
  return tables(
      "A void of a 24-hour collection, in the order of time",
      {{"at", clock("when")},
       {"volume", quantity("how much", range_measure(limits, "void"))},
       {"kept", yes_or_no("whether it went into the bottle (true)")},
       {"bottle", one_of("which bottle, where two are compared", {"whole", "day", "night"})},
       {"protein", quantity("its protein, when not the specimen's", range_measure(limits, "day_protein"))},
       {"creatinine",
        quantity("its creatinine, when not the specimen's", range_measure(limits, "day_creatinine"))}},
      {"at", "volume"});
}

} // namespace

std::vector<std::string> bottle_words(const Shelf& shelf) {
  std::vector<std::string> bottles;
  for (const auto& reagent : shelf.world->catalogue.reagents) {
    bottles.push_back(reagent.key);
  }
  return bottles;
}

Json specimen_schema(const Shelf& shelf) {
  const auto& limits = *shelf.limits;
  Json properties = {
      {"volume", quantity("what came", range_measure(limits, "volume"))},
      {"temperature", quantity("as it stands at the bench; left out where legs say the way",
                               range_measure(limits, "temperature"))},
      {"ph", number("pH, reached by titration with chloride or sodium", limits.ranges.at("ph"))},
      {"yellow",
       number("absorbance a cm at 420 nm of the yellow pigments: 0.02 very dilute, 0.5 very concentrated",
              limits.ranges.at("yellow"))},
      {"stood", quantity("in an open, lit cup before it reached the bench", range_measure(limits, "stood"))},
      {"dissolved", dissolved(shelf)},
      {"solids", particles(shelf, "Suspended solids", limits.solids, scenario::solid_measure)},
      {"cells", particles(shelf, "Cells and casts", limits.cells, cells)},
      {"infection",
       particles(shelf, "Organisms that are growing when the urine is passed", limits.organisms, organisms)},
      {"contamination", particles(shelf, "Organisms from skin and cup, which have to wake first",
                                  limits.organisms, organisms)},
      {"leg", tables("A stretch of the way from the patient to the bench",
                     {{"hours", quantity("how long", range_measure(limits, "leg_hours"))},
                      {"temperature",
                       quantity("of what is round the container", range_measure(limits, "leg_temperature"))},
                      {"open", yes_or_no("whether the container is open (false)")},
                      {"light", quantity("how lit", range_measure(limits, "leg_light"))}},
                     {"hours", "temperature"})},
      {"preservative", tables("Something put into the container on the way",
                              {{"bottle", one_of("of the chemistry", bottle_words(shelf))},
                               {"dose_per_100_ml", dose(limits)},
                               {"at", quantity("after it was passed", range_measure(limits, "leg_hours"))}},
                              {"bottle", "dose_per_100_ml"})},
  };
  Json all =
      table("The hidden truth, in physical units", properties, {"volume", "ph", "yellow", "dissolved"});
  all["anyOf"] = {{{"required", {"temperature"}}}, {{"required", {"leg"}}}};
  return all;
}

Json collection_schema(const Shelf& shelf) {
  const auto& limits = *shelf.limits;
  const auto& book = reception::shipped_book().value();
  const Json properties = {
      {"number", words("the patient's number on the form")},
      {"request", list_of("what is asked for", book.keys("request"), true)},
      {"kind", one_of("what kind of specimen", book.keys("kind"))},
      {"container", one_of("what it came in", book.keys("container"))},
      {"received", clock("the laboratory's stamp")},
      {"passed", clock("time of the void as written")},
      {"start", clock("start of a 24-hour collection as written")},
      {"stop", clock("end of a 24-hour collection as written")},
      {"label", one_of("where the label is (container)", {"container", "lid", "none"})},
      {"label_name", maybe_words("as on the label; \"-\" when it is not written there (as on the form)")},
      {"label_number", maybe_words("as on the label; \"-\" when it is not written there (as on the form)")},
      {"preservative", one_of("on the label (none)", book.keys("preservative"))},
      {"preservative_mislabelled", yes_or_no("the label is not true of the specimen, and that is the point")},
      {"time_miswritten", yes_or_no("the time is not true of the specimen, and that is the point")},
      {"storage", one_of("on the way (room)", {"room", "refrigerated"})},
      {"contamination", one_of("what else is in it (none)", book.keys("contamination"))},
      {"leaking", yes_or_no("whether it leaks (false)")},
      {"volume", quantity("what is in the container", range_measure(limits, "container_volume"))},
      {"remark", maybe_words("words on the form")},
      {"replaceable", yes_or_no("whether the patient can give another (true)")},
      {"weight", quantity("body weight, for the 24-hour exercise", range_measure(limits, "body_weight"))},
      {"sex", one_of("for the 24-hour exercise", {"female", "male"})},
      {"protein_by",
       one_of("the student's own figure of this test takes the place of the sheet's", figures_of_protein())},
      {"void", voids(limits)},
  };
  return table("How the specimen came over the counter; with it the case asks at the counter", properties,
               {"number", "request", "kind", "container", "received"});
}

Json bench_schema(const Shelf& shelf) {
  const auto& limits = *shelf.limits;
  Json ages = Json::object();
  for (const auto& bottle : bottle_words(shelf)) {
    ages[bottle] = quantity("since it was opened", range_measure(limits, "bottle_age"));
  }
  const Json properties = {
      {"room", quantity("of the room", range_measure(limits, "room"))},
      {"urinometer_zero_error",
       number("what the float reads in water less 1.000 (0)", limits.ranges.at("zero_error"))},
      {"refractometer_zero_error",
       number("what water reads on the refractometer less 1.000 (0)", limits.ranges.at("zero_error"))},
      {"urinometer_calibration",
       quantity("what the float was made for (15 C)", range_measure(limits, "calibration"))},
      {"reagents", list_of("bottles that are out", bottle_words(shelf), false)},
      {"bottle_age", table("Days since bottles were opened; a bottle not named is fresh", ages, {})},
  };
  return table("Room, float and shelf", properties, {"room", "reagents"});
}

} // namespace matula::author
