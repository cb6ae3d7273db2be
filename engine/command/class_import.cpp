#include "engine/command/class_run.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/records/trouble.hpp"

#include <ctime>
#include <fmt/format.h>
#include <fmt/ostream.h>
#include <nlohmann/json.hpp>
#include <ostream>

namespace matula::command {

MarkingRoom open_marking_room() {
  auto ground = load_ground();
  if (!ground) {
    throw records::Trouble(scenario::to_text(ground.error()));
  }
  MarkingRoom room{std::move(*ground), nullptr};
  room.marker =
      std::make_unique<records::Marker>(*room.ground.world, room.ground.standards, assets::folder());
  return room;
}

records::Scope scope_of(const ClassScope& asked) {
  return {asked.exercise, asked.label, asked.pseudonym};
}

std::int64_t now_s() {
  return static_cast<std::int64_t>(std::time(nullptr));
}

std::string day_of(std::int64_t time_s) {
  const std::time_t time = time_s;
  std::tm parts{};
  gmtime_r(&time, &parts);
  return fmt::format("{:04}-{:02}-{:02}", parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday);
}

records::Progress progress_on(std::ostream& err) {
  return [&err](const records::Step& step) {
    constexpr std::size_t lines = 50; // At most, for what goes well.
    const std::size_t every = 1 + step.total / lines;
    if (step.done % every == 0 || step.done == step.total || step.words.rfind("refused", 0) == 0) {
      fmt::print(err, "{}/{} {}: {}\n", step.done, step.total, step.came_from, step.words);
      err.flush();
    }
  };
}

void print_refused(const std::vector<records::Refused>& refused, std::ostream& err) {
  for (const auto& one : refused) {
    fmt::print(err, "{} was not taken: {}\n", one.file, one.why);
  }
}

int run_class_import(const ClassImport& asked, std::ostream& out, std::ostream& err) {
  records::Store store(asked.store); // First: a store that cannot be written is said at once.
  auto room = open_marking_room();
  records::ScenarioFolders folders(asked.scenarios.begin(), asked.scenarios.end());
  folders.push_back(assets::folder().parent_path() / "scenarios");
  const records::ImportWishes wishes{asked.label, asked.keep_until, asked.threads, now_s()};
  const auto sum =
      records::import_folder(store, *room.marker, asked.folder, folders, wishes, progress_on(err));
  print_refused(sum.refused, err);
  for (const auto& warning : sum.warnings) {
    fmt::print(err, "{}\n", warning);
  }
  if (asked.json) {
    nlohmann::json refused = nlohmann::json::array();
    for (const auto& one : sum.refused) {
      refused.push_back({{"file", one.file}, {"why", one.why}});
    }
    out << nlohmann::json{{"new", sum.fresh},
                          {"known", sum.known},
                          {"go_on", sum.goes_on},
                          {"refused", refused},
                          {"warnings", sum.warnings}}
               .dump(1)
        << '\n';
  } else {
    fmt::print(out, "{} new, {} known already, {} not taken\n", sum.fresh, sum.known, sum.refused.size());
  }
  return sum.refused.empty() ? exit_good : exit_bad_input;
}

} // namespace matula::command
