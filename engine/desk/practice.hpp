#pragma once

#include "engine/desk/beside.hpp"
#include "engine/desk/ground.hpp"
#include "engine/desk/question.hpp"
#include "sim/bench/scene.hpp"

#include <cstdint>
#include <filesystem>
#include <memory>

namespace matula::desk {

/// A skill on the list.
struct SkillOffer {
  std::string key;
  std::string title;
  std::string about;
  int answered = 0; ///< In all.
  bool due = false; ///< A rule of it has faded.
};

/// A quiz on the list.
struct QuizOffer {
  std::filesystem::path file; ///< The blueprint, or the quiz that was begun.
  std::string title;
  std::string about;
  int unknowns = 0;
  int minutes = 0; ///< 0: as long as it takes.
  int answered = 0;
  std::string problem; ///< Why it cannot be opened; else empty.
};

/// What drills and quizzes share: the things unknowns are made from, the worker that makes them, the
/// learner's record. Truths stay inside.
class PracticeRoom {
public:
  /// `learner`: folder for the learner's record and quizzes.
  [[nodiscard]] static tl::expected<PracticeRoom, scenario::Problems>
  load(const Ground& ground, const std::filesystem::path& learner);
  ~PracticeRoom();
  PracticeRoom(PracticeRoom&&) noexcept;
  PracticeRoom& operator=(PracticeRoom&&) noexcept;

  [[nodiscard]] std::vector<SkillOffer> skills() const;
  [[nodiscard]] std::vector<QuizOffer> quizzes() const;
  [[nodiscard]] std::vector<QuizOffer> unfinished() const;

private:
  friend class Drill;
  friend class QuizRun;
  struct Impl;
  explicit PracticeRoom(std::shared_ptr<Impl> impl);
  std::shared_ptr<Impl> impl_;
};

/// Unknowns of some skills one after another, as hard as suits, each answered at once.
class Drill {
public:
  Drill(const PracticeRoom& room, const std::vector<std::string>& skills, std::uint64_t seed);
  ~Drill();
  Drill(Drill&&) noexcept;
  Drill& operator=(Drill&&) noexcept;

  /// Whether the unknown has been made; until then there is nothing to see.
  [[nodiscard]] bool ready();
  [[nodiscard]] const Question& question() const;
  [[nodiscard]] bench::Scene scene(const appearance::View& view) const;
  [[nodiscard]] std::string in_hand() const;
  /// Answers it, for good; what could not be written into the record comes back in words.
  [[nodiscard]] std::string answer(const std::vector<std::string>& reply);
  /// After answer().
  [[nodiscard]] const std::optional<Feedback>& feedback() const;
  [[nodiscard]] std::vector<Beside> beside(const appearance::View& view) const;
  /// Whether tubes beside it are still to come.
  [[nodiscard]] bool beside_pending() const;
  void next();
  [[nodiscard]] int answered() const; ///< In this drill.

private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

/// A quiz: no word of what is right before the end, then all of it.
class QuizRun {
public:
  [[nodiscard]] static tl::expected<QuizRun, scenario::Problems>
  begin(const PracticeRoom& room, const std::filesystem::path& blueprint, bool timed);
  [[nodiscard]] static tl::expected<QuizRun, scenario::Problems> resume(const PracticeRoom& room,
                                                                        const std::filesystem::path& file);
  ~QuizRun();
  QuizRun(QuizRun&&) noexcept;
  QuizRun& operator=(QuizRun&&) noexcept;

  [[nodiscard]] const std::string& title() const;
  [[nodiscard]] int count() const;
  [[nodiscard]] int answered() const;
  [[nodiscard]] int place() const; ///< Of the unknown on show, from 0.
  void go_to(int place);           ///< An unknown that is still open, or any after the end.
  void go_on();                    ///< To the next open one.
  [[nodiscard]] bool is_open(int place) const;

  [[nodiscard]] bool ready();
  [[nodiscard]] const Question& question() const;
  [[nodiscard]] bench::Scene scene(const appearance::View& view) const;
  [[nodiscard]] std::string in_hand() const;
  /// Answers the unknown on show for good and goes on to the next; the problem in words, or empty.
  [[nodiscard]] std::string answer(const std::vector<std::string>& reply);

  void run(double wall_s);                            ///< Time goes by.
  [[nodiscard]] std::optional<double> left_s() const; ///< Nothing without a limit.
  /// Ends it, marks it and keeps the answers; the problem in words, or empty. What is open counts as left
  /// out.
  [[nodiscard]] std::string finish();
  [[nodiscard]] bool finished() const;

  // After finish(). Whatever still has to be made is made then; `marked` is false until all is.
  [[nodiscard]] bool marked();
  [[nodiscard]] const std::string& trouble() const; ///< What could not be written down; empty when all was.
  [[nodiscard]] const scoring::Report&
  report() const; ///< Every mark, by ledger; labels begin with the number.
  [[nodiscard]] const Feedback& feedback(int place) const;
  [[nodiscard]] std::vector<Beside> beside(const appearance::View& view) const;
  [[nodiscard]] bool beside_pending() const;

private:
  struct Impl;
  explicit QuizRun(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::desk
