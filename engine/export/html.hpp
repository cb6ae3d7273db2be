#pragma once

#include "engine/judging/figures.hpp"
#include "engine/records/review.hpp"

#include <map>
#include <string>

namespace matula::exports {

struct PageWishes {
  std::string title;                        ///< "Spring 2027, second examination"
  std::string day;                          ///< Of the report.
  std::map<std::string, std::string> names; ///< By pseudonym; empty: pseudonyms alone.
  std::vector<records::ToReview> to_review; ///< Sittings whose marks do not stand yet.
};

/// A class report on pages that print: one file, no scripts, nothing fetched from anywhere; all pictures in
/// greys.
[[nodiscard]] std::string class_page(const judging::ClassView& view, const PageWishes& wishes);

} // namespace matula::exports
