#pragma once

#include "engine/practice/quiz.hpp"

#include <filesystem>
#include <optional>

namespace matula::practice {

/// A quiz that was begun, as its file has it.
struct QuizState {
  Quiz quiz;
  std::vector<std::optional<Reply>> replies; ///< As many as unknowns; nothing where none was given yet.
  double elapsed_s = 0;                      ///< Spent at it, as last noted.
  bool finished = false;
};

/// Reads a quiz's file; a last line that was cut off when the program was killed is left out, every other
/// fault is a problem.
[[nodiscard]] tl::expected<QuizState, scenario::Problems> read_quiz(const std::filesystem::path& file);

/// A quiz being worked: every answer is on the disk before it counts.
class QuizLog {
public:
  /// Begins the file KEY-N.jsonl in the folder, N the first number that is free.
  [[nodiscard]] static tl::expected<QuizLog, scenario::Problems> begin(const std::filesystem::path& folder,
                                                                       const Quiz& quiz);
  [[nodiscard]] static tl::expected<QuizLog, scenario::Problems> resume(const std::filesystem::path& file);

  [[nodiscard]] const QuizState& state() const { return state_; }
  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

  // Each gives the problem in words, or nothing. A second answer to an unknown is refused.
  [[nodiscard]] std::string answer(std::size_t unknown, const Reply& reply, double elapsed_s);
  [[nodiscard]] std::string note_time(double elapsed_s);
  [[nodiscard]] std::string finish(double elapsed_s);

private:
  QuizLog(std::filesystem::path file, QuizState state) : file_(std::move(file)), state_(std::move(state)) {}
  [[nodiscard]] std::string put(const std::string& line) const;

  std::filesystem::path file_;
  QuizState state_;
};

/// Files of quizzes begun in a folder, sorted.
[[nodiscard]] std::vector<std::filesystem::path> quiz_files(const std::filesystem::path& folder);

} // namespace matula::practice
