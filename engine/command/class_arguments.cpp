#include "engine/command/class_verbs.hpp"

#include <CLI/CLI.hpp>

#include <memory>

namespace matula::command {
namespace {

constexpr const char* exit_help =
    "Exit: 0 good, 1 the input is bad, 2 the call is wrong. Results on standard output, progress and errors "
    "on standard error.";

CLI::Option* add_store(CLI::App& verb, ClassScope& scope) {
  return verb.add_option("--store", scope.store, "The class's store: a file, or postgresql://HOST/DATABASE")
      ->capture_default_str();
}

void add_scope(CLI::App& verb, ClassScope& scope) {
  verb.add_option("--case", scope.exercise, "Only this case");
  verb.add_option("--label", scope.label, "Only sittings imported under this label");
  verb.add_option("--student", scope.pseudonym, "Only this pseudonym");
}

void add_json(CLI::App& verb, ClassScope& scope) {
  verb.add_flag("--json", scope.json, "Print JSON");
}

/// A verb whose choices end up in `chosen` when it is called.
template <class One>
std::pair<CLI::App*, std::shared_ptr<One>> add_verb(CLI::App& all, Class& chosen, const char* name,
                                                    const char* words) {
  auto* verb = all.add_subcommand(name, words);
  auto asked = std::make_shared<One>();
  add_store(*verb, *asked);
  verb->footer(exit_help);
  verb->callback([&chosen, asked] { chosen.verb = *asked; });
  return {verb, asked};
}

const CLI::Validator& a_day() {
  static const CLI::Validator day(
      [](std::string& text) {
        const bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-' &&
                            text.find_first_not_of("0123456789-") == std::string::npos;
        return shaped ? std::string() : "found \"" + text + "\"; write a day as 2027-09-30";
      },
      "DAY");
  return day;
}

void add_import(CLI::App& all, Class& chosen) {
  auto [verb, asked] = add_verb<ClassImport>(
      all, chosen, "import",
      "Take in a folder of sittings, one folder a student named by the pseudonym; mark them by replay");
  verb->add_option("FOLDER", asked->folder, "Folder of students' folders")->required();
  verb->add_option(
      "--scenarios", asked->scenarios,
      "Folder of your own scenario files; may be given several times. Those shipped are always looked at");
  verb->add_option("--label", asked->label, "A word for this lot, such as \"spring 2027\"");
  verb->add_option("--keep-until", asked->keep_until, "Last day they may be kept, such as 2027-09-30")
      ->check(a_day());
  verb->add_option("--threads", asked->threads, "How many sittings are marked at once")
      ->check(CLI::Range(1, 64));
  add_json(*verb, *asked);
}

void add_list(CLI::App& all, Class& chosen) {
  auto [verb, asked] = add_verb<ClassList>(all, chosen, "list", "Print the sittings of a store");
  add_scope(*verb, *asked);
  verb->add_flag("--all-scores", asked->all_scores, "Earlier scores too");
  add_json(*verb, *asked);
}

void add_sitting(CLI::App& all, Class& chosen) {
  auto [verb, asked] = add_verb<ClassSitting>(all, chosen, "sitting",
                                              "Replay one sitting and print its marks with their reasons, or "
                                              "write it out to be replayed on the bench");
  verb->add_option("NUMBER", asked->number, "Its number in the store")->required();
  verb->add_option("-o,--output", asked->output, "Folder to write its log and scenario into");
  add_json(*verb, *asked);
}

void add_rescore(CLI::App& all, Class& chosen) {
  auto [verb, asked] = add_verb<ClassRescore>(
      all, chosen, "rescore", "Mark stored sittings anew, keep both scores, and print what differs");
  add_scope(*verb, *asked);
  verb->add_option("--scenario", asked->scenario,
                   "The case's scenario with other weights, [marking] or decisions");
  verb->add_flag("--trial", asked->on_trial, "Store nothing: print what would come of it");
  verb->add_option("--threads", asked->threads, "How many sittings are marked at once")
      ->check(CLI::Range(1, 64));
  add_json(*verb, *asked);
}

void add_versions(CLI::App& all, Class& chosen) {
  auto [verb, asked] = add_verb<ClassVersions>(
      all, chosen, "versions",
      "Print by which rules and texts the sittings of each case were marked, or let one version count");
  add_scope(*verb, *asked);
  verb->add_option("--choose", asked->choose, "Number of the version that is to count from now on")
      ->check(CLI::PositiveNumber);
  add_json(*verb, *asked);
}

void add_keeping(CLI::App& all, Class& chosen) {
  auto [forget, who] =
      add_verb<ClassForget>(all, chosen, "forget", "Remove a student with everything that came from them");
  forget->add_option("PSEUDONYM", who->who, "The student's pseudonym")->required();
  auto [expire, until] =
      add_verb<ClassExpire>(all, chosen, "expire", "Remove every sitting whose last day is over");
  expire->add_option("--today", until->today, "A day to go by instead of the clock's")->check(a_day());
  auto [names, list] = add_verb<ClassNames>(
      all, chosen, "names",
      "Print the names behind the pseudonyms, or read them from a file; they stand in this store alone");
  names->add_option("FILE", list->file, "CSV with the columns pseudonym,name");
  auto [backup, copy] =
      add_verb<ClassBackup>(all, chosen, "backup", "Write a copy of the store while it is in use");
  backup->add_option("FILE", copy->file, "New file")->required();
  add_verb<ClassCheck>(all, chosen, "check", "Look through the whole store for damage; it changes nothing");
}

void add_show(CLI::App& all, Class& chosen) {
  auto [verb, asked] = add_verb<ClassShow>(
      all, chosen, "show", "Print the class: how it read, items, faults, lines, the standard");
  add_scope(*verb, *asked);
  add_json(*verb, *asked);
}

void add_export(CLI::App& all, Class& chosen) {
  auto [verb, asked] =
      add_verb<ClassExport>(all, chosen, "export", "Write files for other programs, or a report to print");
  verb->add_option("WHAT", asked->what,
                   "sittings, marks, items, confusion (CSV), xapi (statements), fhir (a folder of bundles), "
                   "report (HTML)")
      ->required()
      ->check(CLI::IsMember({"sittings", "marks", "items", "confusion", "xapi", "fhir", "report"}));
  verb->add_option("-o,--output", asked->output, "File to write; a folder for fhir")->required();
  add_scope(*verb, *asked);
  verb->add_option("--home", asked->home, "xapi: the web address that pseudonyms belong to")
      ->default_str("https://matula.invalid/class");
  verb->add_option("--title", asked->title, "report: its title");
  verb->add_flag("--names", asked->names, "report: names beside the pseudonyms");
  verb->add_flag("--for-students", asked->for_students,
                 "sittings, marks, xapi: what was written alone, without marks and what was right");
}

} // namespace

void add_class(CLI::App& app, Class& chosen) {
  auto* all = app.add_subcommand("class", "A class's records: take sittings in, judge, export, forget");
  all->require_subcommand(1);
  all->footer(exit_help);
  add_import(*all, chosen);
  add_list(*all, chosen);
  add_sitting(*all, chosen);
  add_rescore(*all, chosen);
  add_versions(*all, chosen);
  add_show(*all, chosen);
  add_export(*all, chosen);
  add_keeping(*all, chosen);
}

} // namespace matula::command
