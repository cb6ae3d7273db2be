#include "engine/command/class_run.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/records/name_list.hpp"

#include <fmt/format.h>
#include <fmt/ostream.h>
#include <ostream>

namespace matula::command {
namespace {

void print(const records::Removed& removed, std::ostream& out) {
  fmt::print(out, "Removed: {}.\nBackups and files handed out before still hold what they held.\n",
             records::in_words(removed));
}

} // namespace

int run_class_forget(const ClassForget& asked, std::ostream& out, std::ostream& /*err*/) {
  print(records::Store(asked.store).forget(asked.who), out);
  return exit_good;
}

int run_class_expire(const ClassExpire& asked, std::ostream& out, std::ostream& /*err*/) {
  print(records::Store(asked.store).forget_until(asked.today.empty() ? day_of(now_s()) : asked.today), out);
  return exit_good;
}

int run_class_names(const ClassNames& asked, std::ostream& out, std::ostream& /*err*/) {
  records::Store store(asked.store);
  if (!asked.file.empty()) {
    const auto names = records::read_name_list(asked.file);
    store.set_names(names);
    fmt::print(out, "{} names read\n", names.size());
    return exit_good;
  }
  for (const auto& [pseudonym, name] : store.names()) {
    fmt::print(out, "{},{}\n", pseudonym, name);
  }
  return exit_good;
}

int run_class_backup(const ClassBackup& asked, std::ostream& out, std::ostream& /*err*/) {
  records::Store(asked.store).back_up(asked.file);
  fmt::print(out, "{}\n", asked.file);
  return exit_good;
}

int run_class_check(const ClassCheck& asked, std::ostream& out, std::ostream& err) {
  const auto wrong = records::Store(asked.store).find_damage();
  for (const auto& one : wrong) {
    fmt::print(err, "{}: {}\n", asked.store, one);
  }
  fmt::print(out, "{}\n", wrong.empty() ? "nothing wrong was found" : "damaged: go on from the last backup");
  return wrong.empty() ? exit_good : exit_bad_input;
}

} // namespace matula::command
