#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace matula::practice {

/// What is practised by itself.
enum class Skill { Turbidity, Copper, Ring, Meniscus, Corrections, Reception };
inline constexpr std::array<Skill, 6> all_skills{Skill::Turbidity, Skill::Copper,      Skill::Ring,
                                                 Skill::Meniscus,  Skill::Corrections, Skill::Reception};

/// "turbidity", "copper", "ring", "meniscus", "corrections", "reception": as in the learner's record.
[[nodiscard]] std::string to_word(Skill skill);
[[nodiscard]] std::optional<Skill> skill_from_word(std::string_view word);

/// "Clouds of protein"
[[nodiscard]] std::string title_of(Skill skill);
/// What is asked, in a sentence.
[[nodiscard]] std::string about(Skill skill);

/// Whether tubes are graded.
[[nodiscard]] bool has_tubes(Skill skill);
/// Whether it is rules that can be forgotten, and no eye to be trained.
[[nodiscard]] bool is_of_rules(Skill skill);

} // namespace matula::practice
