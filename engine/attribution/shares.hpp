#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <vector>

namespace matula::attribution {

/// A set of deviations put right, one bit each.
using PutRight = std::uint32_t;
inline constexpr std::size_t most_deviations = 20;

/// What comes out when these are put right.
using Outcome = std::function<double(PutRight)>;

/// Outcomes, each worked out once, on two threads; `outcome` must bear being asked by both.
class Outcomes {
public:
  explicit Outcomes(Outcome outcome) : outcome_(std::move(outcome)) {}

  /// Works out those not known yet.
  void learn(const std::vector<PutRight>& sets);
  [[nodiscard]] double of(PutRight set);
  [[nodiscard]] std::size_t known() const { return known_.size(); }

private:
  Outcome outcome_;
  std::map<PutRight, double> known_;
};

struct Sharing {
  double visible = 0;          ///< A smaller change is not seen.
  std::size_t exact_up_to = 5; ///< Deviations that matter.
  std::size_t orders = 16;     ///< Beyond that, so many drawn by lot and each turned round as well.
  std::uint64_t seed = 1;
};

/// The difference between the work as it was and with everything that matters put right, shared out.
struct Shares {
  std::vector<bool> matters;   ///< Of each deviation: whether it changed anything visible.
  std::vector<double> amounts; ///< Sum to `right - found`; 0 for what does not matter.
  double found = 0;
  double right = 0; ///< With all that matters put right.
  bool exact = true;
};

/// Shapley's value of each of `count` deviations (Shapley 1953): the mean, over all orders, of what putting
/// it right changes when those before it have been. What changes nothing visible, put right alone or last, is
/// left as it was and gets no share.
[[nodiscard]] Shares share_out(std::size_t count, const Sharing& how, Outcomes& outcomes);

} // namespace matula::attribution
