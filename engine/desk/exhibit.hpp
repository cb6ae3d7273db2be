#pragma once

#include "engine/desk/beside.hpp"
#include "engine/desk/question.hpp"
#include "engine/practice/maker.hpp"
#include "sim/bench/scene.hpp"

namespace matula::desk {

/// An unknown that has been made, as a learner sees it. For use inside the desk: what it truly is can be had
/// from it.
class Exhibit {
public:
  explicit Exhibit(std::shared_ptr<const practice::Item> item) : item_(std::move(item)) {}

  [[nodiscard]] const practice::Item& item() const { return *item_; }
  /// `with_table`: the words of the grade table are at hand.
  [[nodiscard]] Question question(const practice::Store& store, bool with_table) const;
  /// The rack with the tube at `place` (from 0), the others empty, or the jar with its float; an empty bench
  /// for anything else.
  [[nodiscard]] bench::Scene scene(const appearance::View& view, int place) const;
  /// Vessel of that scene that is in the hand; empty for none.
  [[nodiscard]] std::string in_hand(int place) const;
  /// The tubes of the grades below and above it, where there are such grades.
  [[nodiscard]] std::vector<practice::Unknown> neighbours(const practice::Store& store) const;
  /// Those and it, weakest first, with their words; empty while a neighbour is still being made, and for
  /// anything that is no tube.
  [[nodiscard]] std::vector<Beside> beside(const practice::Maker& maker, const appearance::View& view) const;

private:
  std::shared_ptr<const practice::Item> item_;
};

[[nodiscard]] Feedback feedback_of(const practice::Judged& judged);

} // namespace matula::desk
