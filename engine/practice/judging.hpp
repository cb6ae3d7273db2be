#pragma once

#include "engine/practice/item.hpp"

#include <array>

namespace matula::practice {

// One function a kind of thing; the marks are those of a sitting wherever a sitting marks the same.

[[nodiscard]] Judged judge_tube(const Store& store, const Tube& tube, const std::string& word);
[[nodiscard]] Judged judge_float(const Store& store, const FloatJar& jar, const std::string& entry);
[[nodiscard]] Judged judge_sum(const Store& store, const Sum& sum, const std::array<std::string, 5>& lines);
[[nodiscard]] Judged judge_delivery(const Store& store, const HandedIn& handed, const std::string& verdict,
                                    const std::string& reason);

/// Fills credit and right from the marks.
void add_up(Judged& judged, int right_from);

} // namespace matula::practice
