#include "engine/judging/words.hpp"

#include <fmt/format.h>

namespace matula::judging {

std::string in_words(const std::optional<WithInterval>& figure) {
  if (!figure) {
    return "too few readings";
  }
  return figure->interval ? fmt::format("{:.2f} ({:.2f} to {:.2f})", figure->value, figure->interval->low,
                                        figure->interval->high)
                          : fmt::format("{:.2f}", figure->value);
}

} // namespace matula::judging
