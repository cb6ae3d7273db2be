#pragma once

#include "engine/practice/item.hpp"

#include <memory>
#include <string>
#include <vector>

namespace matula::practice {

/// Makes unknowns on a thread of its own, ahead of need, and keeps the last ones. Safe to ask from one
/// thread.
class Maker {
public:
  explicit Maker(std::shared_ptr<const Store> store);
  ~Maker(); ///< Waits for the thing being made, at most a second or two.
  Maker(const Maker&) = delete;
  Maker& operator=(const Maker&) = delete;

  /// Asks for things in this order, before all that was asked for earlier and is not yet begun.
  void want(const std::vector<Unknown>& unknowns);
  /// Null while it is not made.
  [[nodiscard]] std::shared_ptr<const Item> ready(const Unknown& unknown) const;
  /// Whether making it was given up.
  [[nodiscard]] bool failed(const Unknown& unknown) const;
  /// Waits for it. Throws what make_item threw.
  [[nodiscard]] std::shared_ptr<const Item> now(const Unknown& unknown);
  [[nodiscard]] const Store& store() const;

private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::practice
