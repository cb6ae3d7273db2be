#pragma once

#include "engine/author/shelf.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::author {

/// What a graded test is to show.
struct Want {
  std::size_t grade = 0;        ///< Place of its word.
  std::optional<double> target; ///< Intensity in grades; nothing: somewhere in the middle of the word.
  std::optional<Place> by;      ///< Made with this instead of what the test is made for.
};

/// So much of a substance, in unit_of.
struct WantedAmount {
  Place place;
  double amount = 0;
};

/// What a teacher wants a specimen to look like. Whatever is not said is left as it falls.
struct Wish {
  std::map<std::string, Want> tests;
  std::optional<double>
      gravity; ///< As a float without error shows it at 20 °C, nothing taken off: 1.001 to 1.060.
  std::optional<std::string> colour;
  std::optional<std::string> clarity;
  std::optional<double> ph;
  std::vector<WantedAmount> amounts; ///< Left as they are, whatever a test made of them then shows.
};

/// Reads wishes such as "heat=2+", "benedict=3+ by lactose", "sg=1.018", "colour=amber", "clarity=clear",
/// "ph=6.5", "albumin=130 mg/dL", "solids.urate=200 mg/L". Fails with a sentence for each that cannot be
/// read.
[[nodiscard]] tl::expected<Wish, std::vector<std::string>> wish_from(const std::vector<std::string>& words,
                                                                     const Shelf& shelf);

/// The substance a test's word is made with, where there is one that can be turned; nothing for a test of pH
/// or of gravity, or one nothing in a scenario makes.
[[nodiscard]] std::optional<Place> analyte_of(const std::string& test, const Want& want, const Shelf& shelf);

/// Words for the clarity and for the colour.
[[nodiscard]] const std::vector<std::string>& clarity_words(const Shelf& shelf);
[[nodiscard]] std::vector<std::string> colour_words(const Shelf& shelf);

} // namespace matula::author
