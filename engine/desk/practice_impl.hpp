#pragma once

#include "engine/desk/exhibit.hpp"
#include "engine/desk/practice.hpp"
#include "engine/desk/remember.hpp"
#include "engine/desk/wall_clock.hpp"
#include "engine/practice/choose.hpp"
#include "engine/practice/store.hpp"

namespace matula::desk {

/// Inside of the practice room; for the files of this room alone.
struct PracticeRoom::Impl {
  const Ground* ground = nullptr;
  std::shared_ptr<const practice::Store> store;
  std::unique_ptr<practice::Maker> maker;
  std::filesystem::path folder;
  std::vector<learner::Answer> answers; ///< All of the learner, oldest first.

  [[nodiscard]] std::filesystem::path record_file() const { return desk::record_file(folder); }
  [[nodiscard]] std::filesystem::path quiz_folder() const { return folder / "quizzes"; }

  /// Puts answers into the record; the problem in words, or empty.
  [[nodiscard]] std::string keep(const std::vector<learner::Answer>& added) {
    std::error_code ignored; // A folder that cannot be made is told of when the record is written.
    std::filesystem::create_directories(folder, ignored);
    answers.insert(answers.end(), added.begin(), added.end());
    const auto problems = learner::append(record_file(), added);
    return problems.empty() ? "" : scenario::to_text(problems);
  }
};

} // namespace matula::desk
