#include "engine/generator/generate.hpp"

#include "engine/generator/write.hpp"
#include "engine/reception/delivery.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace matula::generator {

namespace {

constexpr int most_attempts = 100;

/// A solute of a concentrated urine is concentrated, and patients differ besides.
double draw(const Amount& amount, const Luck& luck, double log_dilution) {
  return amount.typical * exponential(amount.follows * log_dilution) *
         luck.lognormal(amount.key, amount.spread);
}

Drawn draw_all(const Pattern& pattern, const Luck& luck) {
  const double log_dilution = pattern.dilution_spread * luck.normal("dilution");
  Drawn drawn;
  drawn.volume_ml = draw(pattern.volume_ml, "volume", luck);
  drawn.temperature_c = draw(pattern.temperature_c, "temperature", luck);
  drawn.ph = draw(pattern.ph, "ph", luck);
  drawn.handed = draw_handing(pattern.handing, pattern.way, luck);
  drawn.stood_h = draw(pattern.stood_h, "stood", luck);
  drawn.room_c = draw(pattern.room_c, "room", luck);
  drawn.yellow = draw(pattern.yellow, luck, log_dilution);
  drawn.sections = pattern.sections;
  for (Section& section : drawn.sections) {
    for (Amount& amount : section.amounts) {
      amount.typical = draw(amount, luck, log_dilution);
    }
  }
  return drawn;
}

/// So that notes and stories can say when and how long ago.
void tell_times(const Pattern& pattern, const Drawn& drawn, Person& person) {
  if (pattern.handing) {
    person.delay = say_delay(drawn.handed.delay_min);
    person.passed = reception::say_clock(drawn.handed.passed_min);
    person.received = reception::say_clock(drawn.handed.received_min);
  }
}

std::string remark(const Pattern& pattern, std::uint64_t seed, bool typical, const Derived& derived) {
  const std::string which = typical ? "its typical patient" : fmt::format("seed {}", seed);
  return fmt::format(
      "# Made by `matula generate {}`: {}.\n"
      "# Follows from the composition: chloride {:.0f} mmol/L, specific gravity {:.4f} (20/20), {:.0f} "
      "mOsm/kg.\n",
      pattern.key, which, derived.chloride_mmol_per_l, derived.gravity, derived.osmolality);
}

} // namespace

tl::expected<Variant, std::string> generate(const Pattern& pattern, const People& people, std::uint64_t seed,
                                            bool typical, const matter::Catalogue& catalogue) {
  const std::string key = typical ? pattern.key : fmt::format("{}-{}", pattern.key, seed);
  std::string why;
  for (int attempt = 1; attempt <= (typical ? 1 : most_attempts); ++attempt) {
    const Luck luck(pattern.key, seed, attempt, typical);
    const int scenario_seed = typical ? pattern.seed : luck.scenario_seed();
    const Drawn drawn = draw_all(pattern, luck);
    Person person = draw_person(pattern, people, luck);
    tell_times(pattern, drawn, person);
    const std::string body = write(pattern, drawn, person, luck, scenario_seed, "");
    // Judged as the reader of scenarios will find it, rounding and all.
    const auto read = scenario::parse(body, key + ".toml", catalogue);
    if (!read) {
      why =
          "the reader of scenarios refused it: " + scenario::to_text(read.error()); // beyond a limit, mostly
      continue;
    }
    Variant variant;
    variant.derived = derive(read->specimen, catalogue);
    why = inconsistent(variant.derived, read->specimen, pattern.bounds);
    if (why.empty()) {
      variant.key = key;
      variant.attempts = attempt;
      variant.text = remark(pattern, seed, typical, variant.derived) + body;
      return variant;
    }
  }
  return tl::make_unexpected(pattern.key + ": no consistent patient found; the last one failed because " +
                             why + "\n");
}

std::filesystem::path patterns_folder(const std::filesystem::path& assets) {
  return assets / "patterns";
}

std::filesystem::path people_file(const std::filesystem::path& assets) {
  return assets / "people.toml";
}

} // namespace matula::generator
