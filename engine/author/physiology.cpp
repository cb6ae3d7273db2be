#include "engine/author/physiology.hpp"

#include "engine/strict/file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace matula::author {

namespace {

const std::vector<std::string>& wholes() {
  static const std::vector<std::string> names{"gravity",           "osmolality", "osmolality_per_gravity",
                                              "chloride",          "fresh_ph",   "urea_per_creatinine",
                                              "yellow_per_gravity"};
  return names;
}

/// Large molecules and what the kidney did not make: they weigh, and count for little or nothing else.
constexpr std::array<const char*, 16> heavy{"albumin",        "globulin",  "light_chain",     "haemoglobin",
                                            "methaemoglobin", "myoglobin", "metmyoglobin",    "glucose",
                                            "fructose",       "galactose", "lactose",         "maltose",
                                            "xylose",         "sucrose",   "contrast_medium", "bile_salts"};

/// What colours a urine besides its yellow; with any of it nothing follows from the yellow.
constexpr std::array<const char*, 12> pigments{
    "bilirubin",    "biliverdin",    "urobilin",    "haemoglobin",     "methaemoglobin",  "myoglobin",
    "metmyoglobin", "homogentisate", "porphobilin", "phenazopyridine", "porphobilinogen", "contrast_medium"};

Physiology::Span read_span(const strict::Table& row) {
  constexpr double most = 1e9;
  Physiology::Span span;
  span.range.low = row.number("low", {0, most, ""});
  span.range.high = row.number("high", {span.range.low, most, ""});
  span.range.unit = row.text_or("unit", "");
  span.words = row.text("words");
  span.source = row.text("source");
  return span;
}

/// Everything that is compared, of one specimen.
class Look {
public:
  Look(const specimen::Specimen& specimen, const Physiology& physiology, const scenario::Limits& limits,
       const matter::Catalogue& catalogue)
      : specimen_(specimen), physiology_(physiology), limits_(limits), catalogue_(catalogue),
        all_(generator::derive(specimen, catalogue)), light_(generator::derive(without_heavy(), catalogue)) {}

  std::vector<std::string> say() {
    for (const auto& substance : physiology_.substances) {
      const double amount = amount_of(specimen_, substance.place, limits_, catalogue_);
      std::string name = substance.place.key;
      std::replace(name.begin(), name.end(), '_', ' ');
      compare(name + " is", amount, substance.span);
    }
    whole("gravity", "the specific gravity, proteins, sugars and contrast medium left out, is",
          light_.gravity);
    whole("osmolality", "the osmolality is", all_.osmolality);
    const double excess = light_.gravity - 1;
    constexpr double too_thin = 0.0015; // Below, the ratio is all rounding.
    if (excess > too_thin) {
      whole("osmolality_per_gravity", "osmolality over gravity, proteins and sugars left out, is",
            light_.osmolality / excess);
    }
    balance();
    const double urea = of("urea");
    const double creatinine = of("creatinine");
    if (urea > 0 && creatinine > 0) {
      whole("urea_per_creatinine", "urea over creatinine is", urea / creatinine);
    }
    if (fresh()) {
      whole("fresh_ph", "the pH is", specimen_.target_ph);
    }
    constexpr double part = 0.010;
    if (excess > too_thin && !coloured()) {
      whole("yellow_per_gravity", "the yellow for each 0.010 of gravity is",
            specimen_.urochrome_a420 / excess * part);
    }
    return std::move(said_);
  }

private:
  [[nodiscard]] double of(const std::string& key) const {
    return amount_of(specimen_, {"dissolved", key}, limits_, catalogue_);
  }

  specimen::Specimen without_heavy() const {
    specimen::Specimen light = specimen_;
    for (const char* key : heavy) {
      set_amount(light, {"dissolved", key}, 0, limits_, catalogue_);
    }
    return light;
  }

  /// Less than none of the anion that makes up the balance means that a cation is missing.
  void balance() {
    constexpr double slack = 0.5;
    const double room =
        all_.added_sodium_mmol_per_l > slack ? -all_.added_sodium_mmol_per_l : all_.chloride_mmol_per_l;
    whole("chloride", "what is left for chloride is", room);
  }

  [[nodiscard]] bool fresh() const {
    constexpr double hours = 2;
    double lived = specimen_.stood_hours;
    for (const auto& leg : specimen_.life) {
      lived += leg.hours;
    }
    return lived <= hours && specimen_.growing_per_ml.empty() && specimen_.preservatives.empty();
  }

  [[nodiscard]] bool coloured() const {
    return std::any_of(pigments.begin(), pigments.end(), [this](const char* key) { return of(key) > 0; });
  }

  void whole(const char* key, const std::string& what, double value) {
    compare(what, value, physiology_.whole.at(key));
  }

  void compare(const std::string& what, double value, const Physiology::Span& span) {
    const auto& range = span.range;
    if (value >= range.low && value <= range.high) {
      return;
    }
    const std::string unit = range.unit.empty() ? "" : " " + range.unit;
    said_.push_back(fmt::format("{} {:.4g}{}; in patients it is from {:g} to {:g}: {}.", what, value, unit,
                                range.low, range.high, span.words));
    said_.back().front() = static_cast<char>(std::toupper(static_cast<unsigned char>(said_.back().front())));
  }

  const specimen::Specimen& specimen_;
  const Physiology& physiology_;
  const scenario::Limits& limits_;
  const matter::Catalogue& catalogue_;
  generator::Derived all_;
  generator::Derived light_;
  std::vector<std::string> said_;
};

} // namespace

tl::expected<Physiology, scenario::Problems> load_physiology(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "author" / "physiology.toml");
  const auto root = file.root();
  Physiology physiology;
  for (const auto& row : root.tables("substance")) {
    Physiology::Substance substance;
    substance.place.section = row.word("section", {"dissolved", "solids", "cells"});
    substance.place.key = row.text("key");
    substance.span = read_span(row);
    physiology.substances.push_back(std::move(substance));
  }
  const auto whole = root.table("whole");
  for (const auto& name : wholes()) {
    physiology.whole[name] = read_span(whole.table(name));
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return physiology;
}

std::vector<std::string> implausible(const specimen::Specimen& specimen, const Physiology& physiology,
                                     const scenario::Limits& limits, const matter::Catalogue& catalogue) {
  return Look(specimen, physiology, limits, catalogue).say();
}

} // namespace matula::author
