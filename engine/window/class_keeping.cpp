#include "engine/records/name_list.hpp"
#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace matula::window {

namespace {

constexpr std::size_t most_rows = 100; ///< Of sittings that would be removed.
const ImVec4 done_colour{0.60F, 0.84F, 0.81F, 1.0F};

/// What came of it, below the group it was asked for in.
void draw_kept(App& app, const ClassView& view, KeepingPart part) {
  if (view.keeping.part != part) {
    return;
  }
  if (!view.room.kept()) {
    if (view.room.reading()) {
      ImGui::TextWrapped("The store is at work.");
    }
    return;
  }
  const auto& kept = *view.room.kept();
  ImGui::TextColored(done_colour, "%s.", kept.title.c_str());
  app.widgets.tell("keeping.done", fmt::format("{}: {}", kept.title, fmt::join(kept.lines, " ")));
  for (const auto& line : kept.lines) {
    ImGui::TextWrapped("%s", line.c_str());
  }
}

void draw_names(App& app, ClassView& view) {
  heading("The list of names");
  ImGui::TextWrapped("%zu names stand in this store, and nowhere else. A list is a text with a student a "
                     "line: pseudonym,name. A name read again takes the place of the one before.",
                     view.room.page()->names.size());
  choose_place(app, "keeping.names", "File of the list (*.csv)", ".csv", view.keeping.names);
  if (app.widgets.button("keeping.names.read", "Read the list", !view.keeping.names.empty())) {
    view.keeping.part = KeepingPart::Names;
    view.room.take_names(place_of(view, view.keeping.names));
  }
  draw_kept(app, view, KeepingPart::Names);
}

void draw_sittings(const std::vector<records::SittingRow>& rows) {
  for (std::size_t i = 0; i < rows.size() && i < most_rows; ++i) {
    const auto& row = rows[i];
    point(fmt::format("Sitting {} of {}, {}, taken in on {}{}", row.number, row.pseudonym, row.exercise,
                      classroom::day_in_words(row.received_s),
                      row.keep_until.empty() ? "" : ", to be kept until " + row.keep_until));
  }
  if (rows.size() > most_rows) {
    point(fmt::format("and {} more", rows.size() - most_rows));
  }
}

void draw_would_forget(App& app, ClassView& view, const classroom::Forgetting& look) {
  const std::string words =
      fmt::format("With {} would be removed: {}.", view.room.page()->call(look.pseudonym, view.by_name),
                  records::in_words(look.removed));
  app.widgets.tell("keeping.would_forget", words);
  ImGui::TextWrapped("%s", words.c_str());
  draw_sittings(look.sittings);
  ImGui::TextWrapped("It cannot be taken back. Backups and files you have handed out are not reached: delete "
                     "those yourself.");
  (void)typed(app, "keeping.again", "Type the pseudonym to say that you mean it", view.keeping.again);
  const std::string pseudonym = look.pseudonym; // A press lets go of the look.
  if (app.widgets.button("keeping.forget", "Forget " + pseudonym,
                         view.keeping.again == pseudonym && !view.room.work_state().running)) {
    view.keeping.again.clear();
    view.keeping.who.clear();
    view.keeping.part = KeepingPart::Forget;
    view.keeping.focus_who = 3; // This button is gone in the next frame.
    view.room.forget(pseudonym);
  }
}

/// Pseudonyms of those who have sat and of those who only stand on the list of names.
std::vector<std::string> everybody(const classroom::StorePage& page) {
  std::set<std::string> all;
  for (const auto& student : page.view.students) {
    all.insert(student.sum.pseudonym);
  }
  for (const auto& [pseudonym, name] : page.names) {
    all.insert(pseudonym);
  }
  return {all.begin(), all.end()};
}

void draw_forget(App& app, ClassView& view) {
  heading("Forget a student");
  if (view.keeping.show_forget) {
    view.keeping.show_forget = false;
    ImGui::SetScrollHereY(0);
  }
  const auto all = everybody(*view.room.page());
  std::vector<std::string> options;
  for (const auto& one : all) {
    options.push_back(view.room.page()->call(one, view.by_name));
  }
  const auto at = std::find(all.begin(), all.end(), view.keeping.who);
  int chosen = at == all.end() ? -1 : static_cast<int>(at - all.begin());
  ImGui::SetNextItemWidth(std::min(ImGui::GetContentRegionAvail().x * 0.5F, ImGui::GetFontSize() * 26));
  if (view.keeping.focus_who > 0) {
    --view.keeping.focus_who;
    app.widgets.focus_next();
  }
  if (app.widgets.pick("keeping.who", "##who", options, chosen)) {
    view.keeping.who = all[static_cast<std::size_t>(chosen)];
    view.keeping.again.clear();
    view.room.look_at_forgetting(view.keeping.who);
  }
  ImGui::SameLine();
  ImGui::TextWrapped("The student; what would be removed is said first");
  if (view.room.forgetting()) {
    draw_would_forget(app, view, *view.room.forgetting());
  }
  draw_kept(app, view, KeepingPart::Forget);
}

void draw_past(App& app, ClassView& view) {
  heading("Sittings whose last day is over");
  if (view.keeping.focus_today > 0) {
    --view.keeping.focus_today;
    app.widgets.focus_next();
  }
  (void)typed(app, "keeping.today", "Go by this day", view.keeping.today);
  const bool day = !view.keeping.today.empty() && is_day(view.keeping.today);
  if (!day) {
    ImGui::TextWrapped("Write the day as 2027-09-30.");
  }
  if (app.widgets.button("keeping.past", "Look which they are", day)) {
    view.room.look_at_past(view.keeping.today);
  }
  draw_kept(app, view, KeepingPart::Past);
  if (!view.room.past()) {
    return;
  }
  const auto& look = *view.room.past();
  const std::string words =
      look.sittings.empty()
          ? fmt::format("No sitting's last day lies before {}.", look.today)
          : fmt::format("Before {} lies the last day of {} sittings. With them would be removed: {}.",
                        look.today, look.sittings.size(), records::in_words(look.removed));
  app.widgets.tell("keeping.would_expire", words);
  ImGui::TextWrapped("%s", words.c_str());
  draw_sittings(look.sittings);
  if (!look.sittings.empty() &&
      app.widgets.button("keeping.expire", fmt::format("Remove these {} sittings", look.sittings.size()),
                         !view.room.work_state().running)) {
    view.keeping.part = KeepingPart::Past;
    view.keeping.focus_today = 3;
    view.room.forget_past(std::string(look.today));
  }
}

void draw_copy_and_check(App& app, ClassView& view) {
  heading("A copy, and a check");
  (void)typed(app, "keeping.copy",
              "Name of the copy; a name alone lies in the folder copies beside the stores",
              view.keeping.copy);
  if (app.widgets.button("keeping.back_up", "Write the copy", !view.keeping.copy.empty())) {
    const bool bare = view.keeping.copy.find('/') == std::string::npos;
    view.keeping.part = KeepingPart::Copy;
    std::error_code ignored; // A folder that cannot be made is told of when the copy is written.
    std::filesystem::create_directories(view.folder / "copies", ignored);
    view.room.back_up(bare ? view.folder / "copies" / view.keeping.copy
                           : std::filesystem::path(view.keeping.copy));
  }
  flow(width_of("Look through the whole store"));
  if (app.widgets.button("keeping.check", "Look through the whole store")) {
    view.keeping.part = KeepingPart::Copy;
    view.room.check_store();
  }
  draw_kept(app, view, KeepingPart::Copy);
  ImGui::TextWrapped("A copy is written while the store is in use, and never over anything. The check looks "
                     "through everything and changes nothing; a large store takes it some seconds.");
}

} // namespace

void begin_forgetting(App& app, const std::string& pseudonym) {
  ClassView& view = *app.classes;
  view.keeping.who = pseudonym;
  view.keeping.again.clear();
  view.keeping.show_forget = true;
  view.room.look_at_forgetting(pseudonym);
  show_page(app, ClassPage::Keeping);
}

void draw_class_keeping(App& app) {
  ClassView& view = *app.classes;
  if (view.keeping.today.empty() && view.keeping.copy.empty()) {
    view.keeping.today = classroom::day_in_words(clock_s());
    view.keeping.copy =
        std::filesystem::path(view.room.page()->address).stem().string() + "-" + view.keeping.today + ".db";
  }
  draw_names(app, view);
  draw_copy_and_check(app, view);
  draw_forget(app, view);
  draw_past(app, view);
}

} // namespace matula::window
