#include "engine/command/arguments.hpp"

#include "engine/command/arguments_exam.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/practice/skill.hpp"
#include "engine/procedure/procedure.hpp"
#include "engine/strict/nearest.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <sstream>

namespace matula::command {
namespace {

constexpr const char* exit_help =
    "Exit: 0 good, 1 the input is bad, 2 the call is wrong. Results on standard output, errors "
    "on standard error.";

/// All verbs' options at once; CLI11 fills the one that was called.
struct Choices {
  OpenBench open;
  Check check;
  Play play;
  Score score;
  Picture picture;
  Ladder ladder;
  Generate generate;
  Drill drill;
  Quiz quiz;
  Progress progress;
  Class records;
  ExamChoices exam;
  Compose compose;
  Forms forms;
  std::string size;
};

void add_check(CLI::App& app, Choices& choices) {
  auto* verb = app.add_subcommand(
      "check", "Check scenario files: every problem with its line, worked sittings, and advice");
  verb->add_option("FILE", choices.check.files, "Scenario files (.toml)")->required();
  verb->add_flag("--quick", choices.check.quick, "Only read the files: no test is done, no advice is given");
  verb->add_flag("--json", choices.check.json, "Print JSON");
  verb->footer(exit_help);
}

void add_play(CLI::App& app, Choices& choices) {
  auto* verb =
      app.add_subcommand("play", "Do the steps of a log without a window; print what is seen and the marks");
  verb->add_option("SCENARIO", choices.play.scenario, "Scenario file (.toml)")->required();
  verb->add_option("STEPS", choices.play.steps, "Log of steps, one JSON object a line")->required();
  verb->add_flag("--json", choices.play.json, "Print JSON");
  verb->footer(exit_help);
}

void add_score(CLI::App& app, Choices& choices) {
  auto* verb = app.add_subcommand("score", "Mark a recorded sitting again by replaying it");
  verb->add_option("SITTING", choices.score.sitting, "Sitting file")->required();
  verb->add_flag("--json", choices.score.json, "Print JSON");
  verb->footer(exit_help);
}

void add_picture(CLI::App& app, Choices& choices) {
  auto* verb = app.add_subcommand("picture", "Draw the bench as it stands after the steps, off-screen");
  verb->add_option("SCENARIO", choices.picture.scenario, "Scenario file (.toml)")->required();
  verb->add_option("STEPS", choices.picture.steps, "Log of steps, one JSON object a line")->required();
  verb->add_option("-o,--output", choices.picture.output, "PNG file to write")->required();
  verb->add_option("--size", choices.size, "Size in pixels, WIDTHxHEIGHT, 64 to 8192 each")
      ->default_str("1280x800")
      ->type_name("WxH");
  verb->footer(exit_help);
}

std::vector<std::string> procedure_keys() {
  std::vector<std::string> keys;
  for (const auto& one : procedure::shipped_list()) {
    keys.push_back(one.key);
  }
  return keys;
}

void add_ladder(CLI::App& app, Choices& choices) {
  auto* verb = app.add_subcommand("ladder", "Do one test by the book at a ladder of concentrations; print "
                                            "what the eye meets and the reference reading");
  verb->add_option("TEST", choices.ladder.test,
                   "A procedure: " + fmt::format("{}", fmt::join(procedure_keys(), ", ")))
      ->required()
      ->check(CLI::IsMember(procedure_keys()));
  verb->add_option("--at", choices.ladder.mg_per_dl, "Concentrations in mg/dL, separated by commas")
      ->delimiter(',')
      ->check(CLI::Range(0.0, 20000.0));
  verb->add_flag("--csv", choices.ladder.csv, "Print comma-separated values");
  verb->footer(exit_help);
}

void add_generate(CLI::App& app, Choices& choices) {
  auto* verb = app.add_subcommand("generate", "Make scenarios from a pattern: the same pattern and seed give "
                                              "the same patient");
  verb->add_option("PATTERN", choices.generate.pattern, "Key of a pattern in assets/patterns, or a file")
      ->required();
  verb->add_option("--seed", choices.generate.seed, "Seed of the first variant; the others follow on")
      ->check(CLI::Range(1, 2000000000));
  verb->add_option("--count", choices.generate.count, "How many")->check(CLI::Range(1, 100000));
  verb->add_flag("--typical", choices.generate.typical, "The pattern's typical patient, without chance");
  verb->add_option("-o,--output", choices.generate.output, "Folder to write into; without it, print");
  verb->footer(exit_help);
}

void add_drill(CLI::App& app, Choices& choices) {
  std::vector<std::string> skills;
  for (const practice::Skill skill : practice::all_skills) {
    skills.push_back(practice::to_word(skill));
  }
  auto* verb =
      app.add_subcommand("drill", "Make unknowns of one skill; print each with its difficulty and what "
                                  "it shows");
  verb->add_option("SKILL", choices.drill.skill, "A skill: " + fmt::format("{}", fmt::join(skills, ", ")))
      ->required()
      ->check(CLI::IsMember(skills));
  verb->add_option("--seed", choices.drill.seed, "Seed of the first unknown; the others follow on")
      ->check(CLI::Range(1, 2000000000));
  verb->add_option("--count", choices.drill.count, "How many")->check(CLI::Range(1, 10000));
  verb->add_option("-o,--output", choices.drill.output, "Folder to draw pictures into");
  verb->footer(exit_help);
}

void add_quiz(CLI::App& app, Choices& choices) {
  auto* verb =
      app.add_subcommand("quiz", "Make the unknowns of a quiz: the same blueprint and seed give the same "
                                 "set");
  verb->add_option("BLUEPRINT", choices.quiz.blueprint, "Key of a blueprint in assets/quizzes, or a file")
      ->required();
  verb->add_option("--seed", choices.quiz.seed, "Another seed, other unknowns as hard")
      ->check(CLI::Range(1, 2000000000));
  verb->add_option("-o,--output", choices.quiz.output, "Folder to draw pictures into");
  verb->footer(exit_help);
}

void add_compose(CLI::App& app, Choices& choices) {
  auto* verb =
      app.add_subcommand("compose", "Make a specimen that looks as wished, every test done by the book");
  verb->add_option(
          "WISH", choices.compose.wishes,
          "What it is to show: TEST=WORD, such as heat=2+ or \"benedict=3+ by lactose\"; sg=1.018, ph=6.5, "
          "colour=amber, clarity=clear, albumin=\"130 mg/dL\"")
      ->required();
  verb->add_option("--from", choices.compose.from, "Scenario file to begin from; without it, a plain urine");
  verb->add_option("-o,--output", choices.compose.output,
                   "Scenario file to write: that of --from with its remarks and order kept, or a new one");
  verb->add_flag("--json", choices.compose.json, "Print JSON");
  verb->footer(exit_help);
}

void add_forms(CLI::App& app, Choices& choices) {
  auto* verb =
      app.add_subcommand("forms", "Make parallel forms of a plan: for every student other specimens that are "
                                  "as hard, and a sheet of request forms and labels to print");
  verb->add_option("PLAN", choices.forms.plan,
                   "A plan's file (.toml), such as assets/plans/protein_and_sugar.toml")
      ->required();
  verb->add_option("-o,--output", choices.forms.output, "Folder to write into")->required();
  verb->add_option("--students", choices.forms.students, "Numbers or pseudonyms, separated by commas")
      ->delimiter(',');
  verb->add_option("--count", choices.forms.count, "How many students, when they are not named")
      ->check(CLI::Range(1, 500));
  verb->add_option("--seed", choices.forms.seed, "Another seed, other specimens as hard")
      ->check(CLI::Range(1, 2000000000));
  verb->add_flag("--json", choices.forms.json, "Print the key as JSON");
  verb->footer(exit_help);
}

void add_progress(CLI::App& app, Choices& choices) {
  auto* verb =
      app.add_subcommand("progress", "Print what a learner's record tells: what to change, skills, own "
                                     "lines between grades, rules that are due");
  verb->add_option("RECORD", choices.progress.record, "A learner's record (.jsonl)")->required();
  verb->add_flag("--json", choices.progress.json, "Print JSON");
  verb->footer(exit_help);
}

bool read_size(const std::string& size, Picture& picture) {
  if (size.empty()) {
    return true;
  }
  std::istringstream in(size);
  char cross = 0;
  char rest = 0;
  const bool shaped = (in >> picture.width >> cross >> picture.height) && !(in >> rest) && cross == 'x';
  const auto fits = [](int pixels) { return pixels >= 64 && pixels <= 8192; };
  return shaped && fits(picture.width) && fits(picture.height);
}

Verb chosen(const CLI::App& app, const Choices& choices) {
  if (app.got_subcommand("check")) {
    return choices.check;
  }
  if (app.got_subcommand("play")) {
    return choices.play;
  }
  if (app.got_subcommand("score")) {
    return choices.score;
  }
  if (app.got_subcommand("picture")) {
    return choices.picture;
  }
  if (app.got_subcommand("ladder")) {
    return choices.ladder;
  }
  if (app.got_subcommand("generate")) {
    return choices.generate;
  }
  if (app.got_subcommand("drill")) {
    return choices.drill;
  }
  if (app.got_subcommand("quiz")) {
    return choices.quiz;
  }
  if (app.got_subcommand("compose")) {
    return choices.compose;
  }
  if (app.got_subcommand("forms")) {
    return choices.forms;
  }
  if (app.got_subcommand("schema")) {
    return Schema{};
  }
  if (app.got_subcommand("progress")) {
    return choices.progress;
  }
  if (app.got_subcommand("class")) {
    return choices.records;
  }
  if (const auto verb = chosen_exam_verb(app, choices.exam)) {
    return *verb;
  }
  return choices.open;
}

/// "help" and "help VERB" as a newcomer types them, in CLI11's own spelling.
std::vector<std::string> spelt_out(int count, const char* const* words) {
  std::vector<std::string> typed(words + 1, words + count);
  if (!typed.empty() && typed.front() == "help") {
    typed.erase(typed.begin());
    typed.emplace_back("--help");
  }
  return typed;
}

/// A first word, or a second one after a verb that has verbs of its own, that is no verb; empty when all is
/// well.
std::string no_verb(const CLI::App& app, const std::vector<std::string>& typed) {
  const CLI::App* level = &app;
  for (const auto& word : typed) {
    std::vector<std::string> verbs;
    for (const auto* verb : level->get_subcommands([](const CLI::App*) { return true; })) {
      verbs.push_back(verb->get_name());
    }
    if (verbs.empty() || word.empty() || word.front() == '-') {
      return "";
    }
    const auto known = std::find(verbs.begin(), verbs.end(), word);
    if (known == verbs.end()) {
      const std::string before = level == &app ? "" : level->get_name() + " ";
      return fmt::format("matula: found no verb '{}'; expected {}. What each does: matula {}--help\n",
                         before + word, strict::suggestion(word, verbs, verbs.size()), before);
    }
    level = level->get_subcommand(word);
  }
  return "";
}

/// Lets CLI11 put its help or complaint into words.
Arguments answer(const CLI::App& app, const CLI::ParseError& error) {
  std::ostringstream out;
  std::ostringstream err;
  const int code = app.exit(error, out, err);
  Arguments arguments;
  arguments.exit_code = code == 0 ? exit_good : exit_wrong_call;
  arguments.out = out.str();
  arguments.err = err.str();
  return arguments;
}

} // namespace

Arguments read_arguments(int count, const char* const* words) {
  CLI::App app{
      "Matula: a bench for learning the manual urine examination. Without a verb it opens the bench.",
      "matula"};
  app.footer(exit_help);
  app.set_version_flag("--version", MATULA_VERSION);
  app.require_subcommand(0, 1);
  Choices choices;
  add_check(app, choices);
  add_play(app, choices);
  add_score(app, choices);
  add_picture(app, choices);
  add_ladder(app, choices);
  add_generate(app, choices);
  add_drill(app, choices);
  add_quiz(app, choices);
  add_progress(app, choices);
  add_class(app, choices.records);
  add_exam_verbs(app, choices.exam, exit_help);
  add_compose(app, choices);
  add_forms(app, choices);
  app.add_subcommand("schema", "Print the JSON Schema of a scenario file, for editors")->footer(exit_help);
  auto typed = spelt_out(count, words);
  if (auto wrong = no_verb(app, typed); !wrong.empty()) {
    Arguments arguments;
    arguments.exit_code = exit_wrong_call;
    arguments.err = std::move(wrong);
    return arguments;
  }
  try {
    std::reverse(typed.begin(), typed.end()); // As CLI11 takes them.
    app.parse(std::move(typed));
  } catch (const CLI::ParseError& error) {
    return answer(app, error);
  }
  Arguments arguments;
  if (!read_size(choices.size, choices.picture)) {
    arguments.exit_code = exit_wrong_call;
    arguments.err =
        "--size: found \"" + choices.size + "\"; write WIDTHxHEIGHT, 64 to 8192 each, such as 1280x800\n";
    return arguments;
  }
  arguments.proceed = true;
  arguments.verb = chosen(app, choices);
  return arguments;
}

} // namespace matula::command
