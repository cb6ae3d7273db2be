#include "engine/attribution/explanation_json.hpp"

#include "engine/scoring/report_json.hpp"

#include <nlohmann/json.hpp>

namespace matula::attribution {

nlohmann::json to_json(const std::vector<Explanation>& explanations) {
  auto all = nlohmann::json::array();
  for (const auto& e : explanations) {
    auto shares = nlohmann::json::array();
    for (const auto& share : e.shares) {
      shares.push_back(
          {{"key", share.key}, {"words", share.words}, {"amount", share.amount}, {"rule", share.rule}});
    }
    all.push_back({{"test", e.test},
                   {"unit", e.in_grades ? "grades" : "relative density"},
                   {"done", e.done},
                   {"found", e.found},
                   {"put_right", e.put_right},
                   {"by_the_book", e.by_the_book},
                   {"found_word", e.found_word},
                   {"book_word", e.book_word},
                   {"shares", shares},
                   {"harmless", e.harmless},
                   {"exact", e.exact},
                   {"words", e.words}});
  }
  return all;
}

std::string marks_text(const scoring::Report& report, const std::vector<Explanation>& explanations,
                       const std::string& scenario_key, bool scenario_changed) {
  auto all = scoring::to_json(report);
  all["why"] = to_json(explanations);
  all["scenario"] = scenario_key;
  all["scenario_changed"] = scenario_changed;
  return all.dump(2) + "\n";
}

} // namespace matula::attribution
