#pragma once

#include "engine/classroom/classroom.hpp"
#include "engine/classroom/student_order.hpp"
#include "engine/render/bench_view.hpp"
#include "engine/window/app.hpp"
#include "engine/window/replay_view.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace matula::window {

/// Pages of a store. `Student` and `Sitting` are reached through the list of students.
enum class ClassPage {
  Standard,
  Tests,
  Items,
  Faults,
  Lines,
  Students,
  Import,
  Rescore,
  Keeping,
  Export,
  Student,
  Sitting
};

/// Something that lies beside the stores.
struct Beside {
  std::filesystem::path path;
  bool is_folder = false;
};

/// Sealed results as they are asked for.
struct SealedView {
  std::string folder, pack, keys, cards, codes, label; ///< As typed.
  seal::Secret passphrase = seal::Secret::zeros(257);  ///< Typed, ended by a 0; wiped once it is handed on.
};

/// Marking anew as it is asked for.
struct RescoreView {
  std::string scenario, rules;
  bool only_passing = false; ///< Show those alone who pass under one version and not the other.
};

/// Keeping as it is asked for.
enum class KeepingPart { None, Names, Copy, Forget, Past };
struct KeepingView {
  KeepingPart part = KeepingPart::None; ///< Where the last thing was asked for.
  bool show_forget = false;             ///< Scroll there.
  int focus_who = 0;                    ///< Frames in which the keyboard goes to the choice of a student,
  int focus_today = 0;                  ///< or to the day: what it stood on is gone.
  std::string names;
  std::string who;   ///< Pseudonym to be forgotten; empty for none chosen.
  std::string again; ///< The same, typed to confirm it.
  std::string today;
  std::string copy; ///< Name of the backup.
};

/// The class as the window holds it between frames.
struct ClassView {
  explicit ClassView(const App& app);

  classroom::Classroom room;
  std::filesystem::path folder; ///< Stores, folders handed in and written files lie here.
  bool open = false;            ///< On the screen.
  ClassPage page = ClassPage::Standard;
  bool focus_page = false; ///< The page's first control gets the keyboard.
  float scroll = 0;        ///< Pages to scroll, wanted by a key.
  std::vector<std::filesystem::path> stores;
  std::vector<Beside> beside; ///< What else lies in the folder: folders handed in, packs, keys, lists.
  std::string address;        ///< As typed.
  bool sealed = false;        ///< Sealed results are taken in instead of logs.
  SealedView results;
  RescoreView rescore;
  KeepingView keeping;
  classroom::StudentColumn order = classroom::StudentColumn::Name;
  bool order_down = false;
  std::vector<std::size_t> ordered; ///< Students by that,
  std::string ordered_for;          ///< as worked out for this page and order.
  std::string import_folder;
  std::string import_scenarios;
  std::string import_label;
  std::string keep_until;
  std::string title;    ///< Of the report.
  std::string home;     ///< xAPI.
  bool by_name = false; ///< Others may see the screen.
  bool only_bad_items = true;
  std::string test;  ///< Shown; empty for the first.
  std::string group; ///< Of tests, whose lines are shown.
  std::string exercise;
  std::string student; ///< On the student's page.
  std::optional<ReplayView> replay;
};

[[nodiscard]] bool at_class(const App& app);
/// "class", or "replay"; with the page as a fact of its own.
[[nodiscard]] std::string class_screen(const App& app);
/// Comes from the start screen.
void open_class(App& app);
void draw_class(App& app, float width, float height);
/// How long the window may sleep.
[[nodiscard]] double class_rest_s(const App& app);
/// Takes in what has come, and lets a replay go on.
void run_class(App& app, double wall_s);
void show_page(App& app, ClassPage page);

// Pages, one or two a file.
void draw_stores(App& app); ///< While none is open.
void draw_class_standard(App& app);
void draw_class_tests(App& app);
void draw_class_items(App& app);
void draw_class_faults(App& app);
void draw_class_lines(App& app);
void draw_class_students(App& app);
void draw_class_student(App& app);
void draw_class_sitting(App& app);
void draw_class_import(App& app);
void draw_class_sealed(App& app); ///< Part of it.
void draw_class_rescore(App& app);
void draw_class_keeping(App& app);
/// Goes to that page, where it is said what would be removed with the student.
void begin_forgetting(App& app, const std::string& pseudonym);
void draw_class_export(App& app);

// Parts of them.
/// The names of a table's columns as plain words: ImGui's own would take the keyboard and do nothing with it.
void table_headings();
/// A table's cell whose words break into lines.
void cell(const std::string& words);
/// A share of the whole as a bar with its words behind it.
void draw_bar(double share, const std::string& words);
/// A line to type into, with its words behind it.
bool typed(App& app, const char* name, const char* words, std::string& text);
/// What lies beside the stores of this kind (`ending`; "" for folders) to choose from, and a line to type
/// another place into.
void choose_place(App& app, const char* name, const char* words, const char* ending, std::string& text);
/// A bare name lies beside the stores; an empty one stays empty.
[[nodiscard]] std::filesystem::path place_of(const ClassView& view, const std::string& text);
/// Looks what lies beside the stores.
void look_into_folder(ClassView& view);
/// UTC, seconds since 1970.
[[nodiscard]] std::int64_t clock_s();
/// "2027-09-30", or nothing.
[[nodiscard]] bool is_day(const std::string& text);
/// Where the lines of a group of tests are drawn: the reference's, these, and each student's as a tick.
void draw_class_lines_picture(const learner::GroupLines& group,
                              const std::vector<judging::StudentView>& students);
/// The tubes of `group` among those of a student or the class; null for none.
[[nodiscard]] const learner::GroupLines* find_group(const std::vector<learner::GroupLines>& groups,
                                                    const std::string& key);
/// "passed", or why not.
[[nodiscard]] std::string say_passed(const records::SittingRow& row);

} // namespace matula::window
