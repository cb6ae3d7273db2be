#pragma once

#include "engine/scenario/limits.hpp"
#include "sim/matter/catalogue.hpp"
#include "sim/specimen/specimen.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace matula::author {

/// Where in `[specimen]` a substance stands: "dissolved", "solids" or "cells", and its key there.
struct Place {
  std::string section = "dissolved";
  std::string key;

  [[nodiscard]] bool operator==(const Place& other) const = default;
};

/// The unit amounts of a place are counted in here: mmol/L for what is written as an amount or either way,
/// mg/dL for what is weighed, mg/L for solids, /uL for cells.
[[nodiscard]] std::string unit_of(const Place& place, const scenario::Limits& limits);

/// How much of it the specimen holds, in unit_of; 0 when it is not listed.
[[nodiscard]] double amount_of(const specimen::Specimen& specimen, const Place& place,
                               const scenario::Limits& limits, const matter::Catalogue& catalogue);

/// Lists so much of it in the place where the reader of scenarios would put it, or takes it off the list.
void set_amount(specimen::Specimen& specimen, const Place& place, double amount,
                const scenario::Limits& limits, const matter::Catalogue& catalogue);

/// The most a scenario may hold of it, in unit_of; nothing when no scenario may list it.
[[nodiscard]] std::optional<double> most_of(const Place& place, const scenario::Limits& limits,
                                            const matter::Catalogue& catalogue);

/// mg/dL of a dissolved substance in unit_of.
[[nodiscard]] double from_mg_per_dl(double mg_per_dl, const std::string& key, const scenario::Limits& limits,
                                    const matter::Catalogue& catalogue);

/// So much as an author writes it ("130 mg/dL", "1.3 g/L"), in unit_of; or what to write instead.
[[nodiscard]] tl::expected<double, std::string> read_amount(const std::string& quantity, const Place& place,
                                                            const scenario::Limits& limits,
                                                            const matter::Catalogue& catalogue);

/// "albumin 132 mg/dL", with the substance's own name.
[[nodiscard]] std::string say_amount(const Place& place, double amount, const scenario::Limits& limits);

/// A line of a section as an author writes it: albumin = "132 mg/dL".
struct Line {
  Place place;
  std::string quantity; ///< "132 mg/dL"
};

/// Every dissolved substance, solid and cell of a specimen, to four figures, in the order of the limits.
[[nodiscard]] std::vector<Line> lines_of(const specimen::Specimen& specimen, const scenario::Limits& limits,
                                         const matter::Catalogue& catalogue);

/// The specimen as it comes back after having been written down: amounts to four figures, pH and yellow to
/// three.
[[nodiscard]] specimen::Specimen as_written(specimen::Specimen specimen, const scenario::Limits& limits,
                                            const matter::Catalogue& catalogue);

/// Figures kept when a specimen is written down.
inline constexpr int amount_figures = 4;
inline constexpr int bare_figures = 3;

} // namespace matula::author
