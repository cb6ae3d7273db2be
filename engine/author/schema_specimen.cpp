#include "engine/author/schema_parts.hpp"

#include "engine/assets/world.hpp"

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

/// Grams of a powder are worth as many millilitres as its bottle says, which is not known here.
Json dose(const scenario::Limits& limits) {
  Measure by_volume = range_measure(limits, "dose");
  by_volume.units.push_back({"g", 0.01});
  return quantity("what was put in for each 100 mL", by_volume);
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
      {"cells", particles(shelf, "Cells and casts", limits.cells, scenario::cell_measure)},
      {"infection", particles(shelf, "Organisms that are growing when the urine is passed", limits.organisms,
                              scenario::organism_measure)},
      {"contamination", particles(shelf, "Organisms from skin and cup, which have to wake first",
                                  limits.organisms, scenario::organism_measure)},
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
  Json all = table("How the specimen came over the counter; with it the case asks at the counter",
                   collection_fields(shelf));
  all["properties"]["void"] =
      tables("A void of a 24-hour collection, in the order of time", void_fields(*shelf.limits));
  return all;
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
