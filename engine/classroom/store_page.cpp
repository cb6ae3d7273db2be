#include "engine/classroom/store_page.hpp"

#include <set>

namespace matula::classroom {

std::string StorePage::call(const std::string& pseudonym, bool by_name) const {
  const auto found = names.find(pseudonym);
  return by_name && found != names.end() && !found->second.empty() ? found->second + " (" + pseudonym + ")"
                                                                   : pseudonym;
}

StorePage read_page(records::Store& store, const std::string& address, const records::Scope& scope,
                    const judging::Basis& basis) {
  StorePage page;
  page.address = address;
  page.scope = scope;
  const auto all = store.sittings();
  std::set<std::string> cases;
  std::set<std::string> labels;
  for (const auto& row : all) {
    cases.insert(row.exercise);
    if (!row.label.empty()) {
      labels.insert(row.label);
    }
    const bool wanted = (scope.exercise.empty() || scope.exercise == row.exercise) &&
                        (scope.label.empty() || scope.label == row.label) &&
                        (scope.pseudonym.empty() || scope.pseudonym == row.pseudonym);
    if (wanted) {
      page.sittings.push_back(row);
    }
  }
  page.all_sittings = static_cast<int>(all.size());
  page.cases.assign(cases.begin(), cases.end());
  page.labels.assign(labels.begin(), labels.end());
  page.view = judging::judge(store, scope, basis);
  page.to_review = records::to_review(store, scope);
  page.names = store.names();
  return page;
}

} // namespace matula::classroom
