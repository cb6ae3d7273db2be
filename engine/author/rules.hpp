#pragma once

#include "engine/author/amounts.hpp"
#include "engine/scenario/problem.hpp"
#include "engine/strict/table.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::author {

/// How a word for the colour is come by.
struct ColourKnob {
  std::string word;
  std::vector<double> yellow;        ///< From, to; absorbance per cm at 420 nm.
  std::vector<std::string> with;     ///< Pigments,
  std::vector<double> amounts;       ///< so much of each, in unit_of,
  std::vector<double> factors{1, 1}; ///< times from, to.
};

/// assets/author/compose.toml.
struct ComposeRules {
  std::vector<std::string> scaled;
  std::string balance_with;
  double least_chloride = 0; ///< mmol/L
  int rounds = 6;
  double near_enough = 0.06;
  double clear_of_line = 0.12;
  double gravity_within = 4e-5;
  int most_tubes = 14;
  std::map<std::string, Place>
      analytes; ///< By test: what its ladder is made of, where that cannot be listed.
  std::vector<ColourKnob> colours;
  double dissolved_co2_mmol_per_l = 1.2; ///< What bicarbonate of an alkaline urine is worked out from,
  double bicarbonate_pk = 6.1;
  double bicarbonate_from_ph = 6.6; ///< from this pH on.
  Place clarity;
  std::vector<double> clarity_ladder;
};

[[nodiscard]] tl::expected<ComposeRules, scenario::Problems>
load_compose_rules(const std::filesystem::path& assets_folder);

/// Something in a case that misleads, and what tells it for what it is: assets/author/traps.toml.
struct Trap {
  /// Something that must be so of the case for the trap to be there; all of them.
  struct Sign {
    Place place;               ///< A substance,
    std::string of;            ///< or "ph", "temperature", "stood", "yellow", "zero_error",
    std::optional<double> low; ///< at least,
    std::optional<double> high;
  };
  std::string key;
  std::string label; ///< "a phosphate cloud"
  std::vector<std::string>
      tests; ///< Misled, one of them must be asked for: procedures, "look", "specific_gravity".
  std::vector<Sign> signs;
  std::vector<std::string>
      settled_by;  ///< Any of these out or asked for: beginnings of bottles, "test:KEY", "decision".
  std::string how; ///< How it is settled, a sentence.
  std::map<std::string, std::string>
      set; ///< What plants it: key paths and values of a scenario; empty: cannot be planted.
  std::map<std::string, std::string> by; ///< By test: the substance that takes the usual one's place.
};

[[nodiscard]] tl::expected<std::vector<Trap>, scenario::Problems>
load_traps(const std::filesystem::path& assets_folder);

} // namespace matula::author
