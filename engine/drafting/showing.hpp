#pragma once

#include "engine/author/worth.hpp"
#include "engine/drafting/newest.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::drafting {

/// What a case shows, as far as it has been worked out.
struct Made {
  unsigned version = 0; ///< Of the draft.
  std::shared_ptr<const bench::Setup> setup;
  std::shared_ptr<const bench::State> specimen; ///< The bench with the specimen swirled and nothing done.
  std::shared_ptr<const bench::State> floated;  ///< With the float at rest in a jar of it; null without room.
  author::Liquid liquid;
  std::vector<std::string> warnings;
  std::vector<author::Shown> shown; ///< In the order of the worksheet; more come until `done`.
  std::vector<author::LedgerWorth> worth;
  std::vector<author::Advice> advice;
  bool done = false;
  std::string trouble; ///< Why the specimen cannot be made.
};

/// Works out, behind the form, what the newest version of a case shows, one test after another.
class Showing {
public:
  /// `shelf` must outlive it.
  explicit Showing(const author::Shelf& shelf) : shelf_(&shelf) {}

  /// Gives up whatever it does for an older version.
  void want(unsigned version, std::shared_ptr<const scenario::Scenario> scenario,
            std::optional<scenario::Review> review);
  void drop() { thread_.drop(); }
  /// As far as it has come; null before anything was made.
  [[nodiscard]] std::shared_ptr<const Made> latest() const;
  [[nodiscard]] bool busy() const { return thread_.busy(); }
  void wait() const { thread_.wait(); }
  /// Tests that were done in all, those of versions given up included.
  [[nodiscard]] int tests_done() const;

private:
  void work(unsigned version, const scenario::Scenario& scenario,
            const std::optional<scenario::Review>& review, const scoring::GiveUp& give_up);
  void hand_over(const Made& made);

  const author::Shelf* shelf_;
  mutable std::mutex guard_;
  std::shared_ptr<const Made> latest_;
  int tests_done_ = 0;
  Newest thread_; ///< Last: it uses all of the above.
};

} // namespace matula::drafting
