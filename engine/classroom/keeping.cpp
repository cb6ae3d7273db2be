#include "engine/classroom/keeping.hpp"

#include "engine/records/name_list.hpp"

#include <fmt/format.h>

namespace matula::classroom {
namespace {

constexpr const char* beyond = "Backups and files handed out before still hold what they held.";

} // namespace

Forgetting look_at_forgetting(records::Store& store, const std::string& pseudonym) {
  Forgetting look;
  look.pseudonym = pseudonym;
  look.removed = store.would_forget(pseudonym);
  records::Scope scope;
  scope.pseudonym = pseudonym;
  look.sittings = store.sittings(scope);
  return look;
}

PastDays look_at_past(records::Store& store, const std::string& today) {
  PastDays look;
  look.today = today;
  look.removed = store.would_forget_until(today);
  for (const auto& row : store.sittings()) {
    if (!row.keep_until.empty() && row.keep_until < today) {
      look.sittings.push_back(row);
    }
  }
  return look;
}

Kept forget(records::Store& store, const std::string& pseudonym) {
  const auto removed = store.forget(pseudonym);
  return {pseudonym + " was forgotten", {"Removed: " + records::in_words(removed) + ".", beyond}, true};
}

Kept forget_past(records::Store& store, const std::string& today) {
  const auto removed = store.forget_until(today);
  return {"Sittings whose last day lies before " + today + " were removed",
          {"Removed: " + records::in_words(removed) + ".", beyond},
          true};
}

Kept take_names(records::Store& store, const std::filesystem::path& file) {
  const auto names = records::read_name_list(file);
  store.set_names(names);
  return {
      "The list of names was read", {fmt::format("{} names from {}.", names.size(), file.string())}, true};
}

Kept back_up(records::Store& store, const std::filesystem::path& file) {
  store.back_up(file.string());
  return {"The store was copied", {file.string()}, false};
}

Kept check_store(records::Store& store) {
  auto wrong = store.find_damage();
  if (wrong.empty()) {
    return {"The store was looked through", {"Nothing wrong was found."}, false};
  }
  wrong.emplace_back("It is damaged: go on from the last backup.");
  return {"Something is wrong in the store", wrong, false};
}

} // namespace matula::classroom
