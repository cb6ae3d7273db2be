#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/scenario/quantity.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace matula::scenario {

/// How much of a substance a specimen may hold, and in which units it is written.
struct Limit {
  enum class Units { Amount, Mass, Both };
  std::string key;           ///< Of a species or of a particle.
  Units units = Units::Both; ///< Amount: mmol/L and its like. Mass: mg/dL and its like.
  double highest = 0;        ///< mmol/L for Amount and Both; mg/dL for Mass; mg/L for particles.
};

/// What may be written in a scenario file: see assets/scenario/limits.toml.
struct Limits {
  std::vector<Limit> dissolved;
  std::vector<Limit> solids;
  std::vector<Limit> cells;                    ///< Highest in a microlitre.
  std::vector<Limit> organisms;                ///< Highest in a millilitre.
  std::map<std::string, strict::Range> ranges; ///< Of everything else, in the unit they name.
};

[[nodiscard]] tl::expected<Limits, Problems> read_limits(const std::filesystem::path& file);

/// Limits of the assets folder, read once.
[[nodiscard]] const tl::expected<Limits, Problems>& shipped_limits();

/// Units and range of a dissolved substance; base mmol/L.
[[nodiscard]] Measure dissolved_measure(const Limit& limit, double molar_mass_g_per_mol);

/// Units and range of a suspended solid; base mg/L.
[[nodiscard]] Measure solid_measure(const Limit& limit);

/// Units and range of cells; base a microlitre.
[[nodiscard]] Measure cell_measure(const Limit& limit);

/// Units and range of organisms; base a millilitre.
[[nodiscard]] Measure organism_measure(const Limit& limit);

/// Units and range of the named range whose unit is "mL", "C" or "h".
[[nodiscard]] Measure range_measure(const Limits& limits, const std::string& name);

} // namespace matula::scenario
