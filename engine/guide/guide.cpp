#include "engine/guide/guide.hpp"

#include "engine/sitting/event_json.hpp"
#include "engine/strict/nearest.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>
#include <cstdlib>

namespace matula::guide {

namespace {

const std::vector<std::string> help_words{"each step", "goal", "name"}; // By Help.
const std::vector<std::string> tabs{"", "reception", "request", "do", "papers", "worksheet"};

std::optional<double> number(const std::string& text) {
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  return text.empty() || *end != '\0' ? std::nullopt : std::optional(value);
}

/// "8 to 10", "5", or a word.
Wanted wanted(const std::string& text) {
  Wanted what;
  const std::string between = " to ";
  if (const auto cut = text.find(between); cut != std::string::npos) {
    const auto low = number(text.substr(0, cut));
    const auto high = number(text.substr(cut + between.size()));
    if (low && high) {
      what.min = *low;
      what.max = *high;
      return what;
    }
  }
  what.word = text;
  return what;
}

std::map<std::string, Wanted> read_done(const strict::Table& row) {
  std::map<std::string, Wanted> all;
  const auto table = row.table("done");
  for (const std::string& key : table.keys()) {
    all[key] = wanted(table.text(key));
  }
  const auto verb = all.find("do");
  const auto& verbs = sitting::verbs();
  if (verb == all.end()) {
    row.complain("done", "what is done, one of the verbs of a log: done = { do = \"pour\", ... }");
  } else if (std::find(verbs.begin(), verbs.end(), verb->second.word) == verbs.end()) {
    table.complain("do", "a verb of a log, " + strict::suggestion(verb->second.word, verbs));
  }
  return all;
}

Step read_step(const strict::Table& row) {
  Step step;
  step.say = row.text("say");
  step.why = row.text("why");
  step.show = row.word_or("show", tabs, "");
  step.done = read_done(row);
  step.after_s = row.number_or("after_s", {0, 86400, "s"}, 0);
  step.too_early = row.text_or("too_early", "");
  if (step.after_s > 0 && step.too_early.empty()) {
    row.complain("too_early", "what to say to a learner who does it before after_s");
  }
  return step;
}

Part read_part(const strict::Table& row) {
  Part part;
  part.title = row.text("title");
  part.goal = row.text("goal");
  const auto help = row.word("help", help_words);
  part.help = static_cast<Help>(std::find(help_words.begin(), help_words.end(), help) - help_words.begin());
  for (const auto& step : row.tables("step")) {
    part.steps.push_back(read_step(step));
  }
  return part;
}

} // namespace

std::filesystem::path guide_file(const std::filesystem::path& assets_folder,
                                 const std::filesystem::path& scenario_file) {
  return assets_folder / "guides" / scenario_file.filename();
}

tl::expected<Guide, scenario::Problems> load(const std::filesystem::path& file) {
  strict::File text(file);
  Guide guide;
  const auto root = text.root();
  guide.welcome = root.text("welcome");
  guide.farewell = root.text("farewell");
  for (const auto& part : root.tables("part")) {
    guide.parts.push_back(read_part(part));
  }
  auto problems = text.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return guide;
}

} // namespace matula::guide
