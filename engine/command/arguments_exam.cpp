#include "engine/command/arguments_exam.hpp"

#include <CLI/CLI.hpp>

namespace matula::command {
namespace {

void add_passphrase(CLI::App& verb, std::string& file, const char* whose) {
  verb.add_option("--passphrase-file", file,
                  std::string("File whose first line is ") + whose +
                      " passphrase, - for standard input; without it, it is asked for at the terminal");
}

void add_effort(CLI::App& verb, std::string& effort) {
  verb.add_option("--effort", effort,
                  "What trying one passphrase costs: light (64 MiB), everyday (256 MiB), "
                  "heavy (1 GiB)")
      ->check(CLI::IsMember({"light", "everyday", "heavy"}))
      ->default_str("everyday");
}

CLI::App* keys_action(CLI::App& keys, const char* name, const char* what, Keys& choice) {
  auto* action = keys.add_subcommand(name, what);
  action->add_option("FILE", choice.file, "File of the keys")->required();
  action->add_flag("--json", choice.json, "Print JSON");
  return action;
}

void add_keys(CLI::App& app, Keys& choice) {
  auto* keys = app.add_subcommand("keys", "Make, show, back up and restore keys for examinations");
  keys->require_subcommand(1);
  auto* made = keys_action(*keys, "new", "Make an instructor's keys, locked with a passphrase", choice);
  made->add_option("--name", choice.name, "Your name, as learners see it")->required();
  add_effort(*made, choice.effort);
  made->add_option("--passphrase-file", choice.passphrase_file,
                   "File whose first line is the passphrase; without it, one is drawn and printed");
  keys_action(*keys, "show", "Show whose keys these are, and their fingerprint", choice);
  auto* backup = keys_action(*keys, "backup", "Write the secret as lines to be printed", choice);
  backup->add_option("-o,--output", choice.paper, "Text file to write")->required();
  add_passphrase(*backup, choice.passphrase_file, "your");
  auto* restore = keys_action(*keys, "restore", "Make the keys again from a printed backup", choice);
  restore->add_option("--from", choice.paper, "Text file with the backup, typed in")->required();
  add_effort(*restore, choice.effort);
  restore->add_option("--passphrase-file", choice.passphrase_file,
                      "File whose first line is the new passphrase; without it, one is drawn and printed");
  auto* device = keys_action(*keys, "device",
                             "Make a learner's device key, and the card the instructor collects", choice);
  device->add_option("--pseudonym", choice.name, "The learner's pseudonym")->required();
}

void add_seal(CLI::App& app, Seal& choice, const std::string& footer) {
  auto* verb = app.add_subcommand("seal", "Seal an examination into a pack, with a sheet for the room");
  verb->add_option("EXAMINATION", choice.plan, "File that describes the examination (.toml)")->required();
  verb->add_option("--key", choice.keys, "Your keys")->required();
  verb->add_option("--cards", choice.cards, "Folder of the learners' cards")->required();
  verb->add_option("-o,--output", choice.output, "Pack to write")->required();
  verb->add_option("--sheet", choice.sheet, "Sheet to write; without it, beside the pack");
  add_effort(*verb, choice.effort);
  add_passphrase(*verb, choice.passphrase_file, "your");
  verb->add_flag("--json", choice.json, "Print JSON, the class passphrase and session code with it");
  verb->footer(footer);
}

void add_pack(CLI::App& app, ShowPack& choice, const std::string& footer) {
  auto* verb = app.add_subcommand("pack", "Check a pack's signature; show its title and fingerprint");
  verb->add_option("PACK", choice.pack, "Pack")->required();
  verb->add_flag("--json", choice.json, "Print JSON");
  verb->footer(footer);
}

void add_sit(CLI::App& app, Sit& choice, const std::string& footer) {
  auto* verb =
      app.add_subcommand("sit", "Work a case of a pack by a file of steps, without a window; goes on "
                                "where it was stopped");
  verb->add_option("PACK", choice.pack, "Pack")->required();
  verb->add_option("STEPS", choice.steps, "Log of steps, one JSON object a line")->required();
  verb->add_option("--device", choice.device, "Your device key")->required();
  verb->add_option("--session", choice.nonce, "Session code, as read out in the room")->required();
  verb->add_option("--case", choice.label, "Which case: unknown-1, unknown-2 ...")->required();
  verb->add_option("-o,--output", choice.folder, "Folder for the sitting and its result")->required();
  add_passphrase(*verb, choice.passphrase_file, "the class's");
  verb->add_flag("--json", choice.json, "Print JSON");
  verb->footer(footer);
}

CLI::App* add_results(CLI::App& app, const char* name, const char* what, Results& choice) {
  auto* verb = app.add_subcommand(name, what);
  verb->add_option("FOLDER", choice.folder, "Folder of returned results (*.result)")->required();
  verb->add_option("--pack", choice.pack, "The pack they were worked from")->required();
  verb->add_option("--key", choice.keys, "Your keys")->required();
  verb->add_option("--codes", choice.codes, "Register of closing codes (.csv: pseudonym,case,code)");
  add_passphrase(*verb, choice.passphrase_file, "your");
  verb->add_flag("--json", choice.json, "Print JSON");
  return verb;
}

void add_feedback(CLI::App& app, Feedback& choice, const std::string& footer) {
  auto* verb = app.add_subcommand("feedback", "Open a released score sheet and replay the own sitting");
  verb->add_option("SHEET", choice.sheet, "Released sheet")->required();
  verb->add_option("--device", choice.device, "Your device key")->required();
  verb->add_option("--log", choice.log, "Your sitting's log; without it, only the sheet is shown");
  verb->add_option("--pack", choice.pack, "The pack: its signer is compared with the sheet's");
  verb->add_flag("--json", choice.json, "Print JSON");
  verb->footer(footer);
}

} // namespace

void add_exam_verbs(CLI::App& app, ExamChoices& choices, const std::string& footer) {
  add_keys(app, choices.keys);
  add_seal(app, choices.seal, footer);
  add_pack(app, choices.pack, footer);
  add_sit(app, choices.sit, footer);
  auto* open = add_results(app, "open-results", "Check returned sittings and mark them by replay",
                           choices.open_results);
  open->add_option("--cards", choices.open_results.cards, "Folder of the learners' cards");
  open->add_option("--store", choices.open_results.store,
                   "Put them into a class's records (as matula class): marked there");
  open->add_option("--label", choices.open_results.label, "Their label in the records: spring 2027");
  open->footer(footer);
  auto* release = add_results(app, "release",
                              "Write each learner a signed score sheet, sealed to the own "
                              "device",
                              choices.release);
  release->add_option("--cards", choices.release.cards, "Folder of the learners' cards")->required();
  release->add_option("-o,--output", choices.release.output, "Folder to write into")->required();
  release->footer(footer);
  add_feedback(app, choices.feedback, footer);
}

std::optional<Verb> chosen_exam_verb(const CLI::App& app, const ExamChoices& choices) {
  if (app.got_subcommand("keys")) {
    Keys keys = choices.keys;
    keys.action = app.get_subcommand("keys")->get_subcommands().front()->get_name();
    return keys;
  }
  if (app.got_subcommand("seal")) {
    return choices.seal;
  }
  if (app.got_subcommand("pack")) {
    return choices.pack;
  }
  if (app.got_subcommand("sit")) {
    return choices.sit;
  }
  if (app.got_subcommand("open-results")) {
    return choices.open_results;
  }
  if (app.got_subcommand("release")) {
    return choices.release;
  }
  if (app.got_subcommand("feedback")) {
    return choices.feedback;
  }
  return std::nullopt;
}

} // namespace matula::command
