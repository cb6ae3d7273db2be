#include "engine/command/class_run.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/records/trouble.hpp"
#include "engine/strict/file.hpp"

#include <fmt/format.h>
#include <fmt/ostream.h>
#include <ostream>
#include <sstream>

namespace matula::command {
namespace {

void print(const records::Removed& removed, std::ostream& out) {
  fmt::print(out,
             "Removed: {} student(s), {} name(s), {} sitting(s) with their logs, {} score(s), {} mark(s), {} "
             "reading(s), {} "
             "written word(s) nobody else wrote, {} scenario(s) nobody else sat.\nBackups and files handed "
             "out before still "
             "hold what they held.\n",
             removed.students, removed.names, removed.sittings, removed.scores, removed.marks,
             removed.readings, removed.words, removed.scenarios);
}

std::vector<std::pair<std::string, std::string>> read_names(const std::string& file) {
  std::string text;
  if (!strict::read_text(file, text)) {
    throw records::Trouble(file + " cannot be read.");
  }
  std::istringstream in(text);
  std::vector<std::pair<std::string, std::string>> names;
  int number = 0;
  for (std::string line; std::getline(in, line);) {
    ++number;
    while (!line.empty() && (line.back() == '\r' || line.back() == ' ')) {
      line.pop_back();
    }
    if (line.empty() || (number == 1 && line == "pseudonym,name")) {
      continue;
    }
    const auto comma = line.find(',');
    std::string name = comma == std::string::npos ? "" : line.substr(comma + 1);
    if (name.size() >= 2 && name.front() == '"' && name.back() == '"') {
      name = name.substr(1, name.size() - 2);
    }
    const std::string pseudonym = line.substr(0, comma);
    if (comma == std::string::npos || !records::refuse_pseudonym(pseudonym).empty()) {
      throw records::Trouble(
          fmt::format("{}:{}: found \"{}\"; write one student a line: pseudonym,name", file, number, line));
    }
    names.emplace_back(pseudonym, name);
  }
  return names;
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
    const auto names = read_names(asked.file);
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
