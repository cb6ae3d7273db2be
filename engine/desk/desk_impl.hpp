#pragma once

#include "engine/desk/desk.hpp"
#include "engine/desk/exam_run.hpp"
#include "engine/guide/follower.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/sitting/live.hpp"

namespace matula::desk {

/// What a desk keeps to itself.
struct Desk::Impl {
  const Ground* ground = nullptr;
  scenario::Scenario scenario;
  scenario::Brief brief;
  sitting::Live live;
  std::filesystem::path log_file;
  std::filesystem::path scenarios{};    ///< Folder the case came from; empty in an examination.
  std::vector<sitting::Event> events{}; ///< As logged; filled when the worksheet has been handed in.
  std::optional<scoring::Report> report{};
  std::vector<attribution::Explanation> why{};
  std::optional<guide::Guide> guide{};
  std::optional<guide::Follower> follower{}; ///< Of the guide.
  std::unique_ptr<ExamRun> exam{};           ///< Only in an examination.

  [[nodiscard]] const sitting::Session& session() const { return live.session(); }

  /// Nothing is wrong with a case that has no guide.
  [[nodiscard]] scenario::Problems find_guide(const std::filesystem::path& scenario_file);
  /// After a replay: on to where the log's times do not fall.
  void go_on();
  bench::Outcome take(const decltype(sitting::Event::what)& what);
  /// Marks what is in the log; the problem in words, or empty.
  [[nodiscard]] std::string mark();
  /// Writes the marks beside the log; the same.
  [[nodiscard]] std::string keep_marks(const std::filesystem::path& file) const;
  /// Adds the sitting to the learner's record; the same.
  [[nodiscard]] std::string remember() const;
};

} // namespace matula::desk
