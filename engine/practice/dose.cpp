#include "engine/practice/dose.hpp"

#include <algorithm>
#include <cmath>

namespace matula::practice {

namespace {

constexpr double next_to_nothing = 0.1; // Of the ladder's least dose above 0.

/// Keeps the nearest of what was tried.
class Search {
public:
  Search(const std::vector<double>& ladder, const Off& off, double enough, int most)
      : ladder_(ladder), off_(off), enough_(enough), most_(most) {}

  Dose find() {
    std::size_t low = 0;
    std::size_t high = ladder_.size() - 1;
    while (high - low > 1 && !done()) {
      const std::size_t middle = (low + high) / 2;
      (off(ladder_[middle]) < 0 ? low : high) = middle;
    }
    const double least = low == 0 ? next_to_nothing * ladder_[1] : ladder_[low];
    if (low == 0) {
      (void)off(0);
    }
    close_in(least, ladder_[high]);
    return best_;
  }

private:
  double off(double dose) {
    const double error = off_(dose);
    if (++best_.tried == 1 || std::abs(error) < std::abs(best_.off)) {
      best_.off = error;
      best_.amount = dose;
    }
    return error;
  }

  [[nodiscard]] bool done() const {
    return best_.tried > 0 && (std::abs(best_.off) < enough_ || best_.tried >= most_);
  }

  /// Halves the interval, now and then by the straight line between its ends.
  void close_in(double low, double high) {
    double low_off = done() ? 0 : off(low);
    double high_off = done() ? 0 : off(high);
    bool straight = true;
    while (!done() && low_off < 0 && high_off > 0) {
      const double share = straight ? std::clamp(-low_off / (high_off - low_off), 0.1, 0.9) : 0.5;
      straight = !straight;
      const double between = std::exp(std::log(low) + share * (std::log(high) - std::log(low)));
      const double now = off(between);
      (now < 0 ? low : high) = between;
      (now < 0 ? low_off : high_off) = now;
    }
  }

  const std::vector<double>& ladder_;
  const Off& off_;
  double enough_;
  int most_;
  Dose best_;
};

} // namespace

Dose find_dose(const std::vector<double>& ladder, const Off& off, double enough, int most) {
  return Search(ladder, off, enough, most).find();
}

} // namespace matula::practice
