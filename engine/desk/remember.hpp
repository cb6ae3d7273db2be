#pragma once

#include "engine/learner/record.hpp"
#include "engine/scoring/report.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace matula::scoring {
struct Rulebook;
}

namespace matula::desk {

/// Where the learner's record lies, in the folder of the sittings.
[[nodiscard]] std::filesystem::path learner_folder(const std::filesystem::path& sittings);
[[nodiscard]] std::filesystem::path record_file(const std::filesystem::path& learner_folder);

/// What a marked sitting adds to the learner's record: every graded tube with its own intensity, the float's
/// reading, the sum, the decision at the counter. Nothing is added for what was not written down. Tubes made
/// at the bench have no difficulty that was chosen beforehand: 0 stands there.
[[nodiscard]] std::vector<learner::Answer> answers_of(const scoring::Report& report,
                                                      const scoring::Rulebook& rules,
                                                      const std::string& sitting, std::int64_t when_s);

} // namespace matula::desk
