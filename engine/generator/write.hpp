#pragma once

#include "engine/generator/consistency.hpp"
#include "engine/generator/fill.hpp"

namespace matula::generator {

/// A pattern's numbers for one patient.
struct Drawn {
  double volume_ml = 0;
  double temperature_c = 0;
  double ph = 0;
  double stood_h = 0;
  double room_c = 0;
  double yellow = 0;
  HandedIn handed;
  std::vector<Section> sections; ///< `typical` holds the drawn value.
};

/// The scenario file as an author would write it by hand. `remark` is put at its head.
[[nodiscard]] std::string write(const Pattern& pattern, const Drawn& drawn, const Person& person,
                                const Luck& luck, int scenario_seed, const std::string& remark);

/// Words in quotes, and a list of them, as TOML writes them.
[[nodiscard]] std::string quoted(const std::string& words);
[[nodiscard]] std::string list(const std::vector<std::string>& words);

/// A number to `digits` significant digits, without an exponent: "130", "0.25", "12300000".
[[nodiscard]] std::string plain_number(double value, int digits);

} // namespace matula::generator
