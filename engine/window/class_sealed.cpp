#include "engine/seal/passphrase.hpp"
#include "engine/window/class_view.hpp"
#include "engine/window/group.hpp"
#include "engine/window/secret_line.hpp"

#include <fmt/format.h>

#include <algorithm>

#include <cstring>

namespace matula::window {

namespace {

/// The passphrase in a form of its own; what was typed is wiped.
seal::Secret taken(seal::Secret& typed) {
  const char* const text = reinterpret_cast<const char*>(typed.data());
  seal::Secret words = seal::passphrase_bytes({text, std::strlen(text)});
  typed = seal::Secret::zeros(typed.size());
  return words;
}

void begin(ClassView& view, const App& app) {
  SealedView& asked = view.results;
  classroom::SealedOrder order;
  order.files = {place_of(view, asked.folder), place_of(view, asked.pack), place_of(view, asked.keys),
                 place_of(view, asked.cards), place_of(view, asked.codes)};
  order.label = asked.label;
  order.assets_folder = app.ground.assets_folder();
  order.now_s = clock_s();
  view.room.take_sealed(order, taken(asked.passphrase));
}

void draw_row(App& app, ClassView& view, const classroom::SealedSitting& one) {
  ImGui::TableNextRow();
  cell(fmt::format("{}, {}{}", view.room.page()->call(one.pseudonym, view.by_name), one.label,
                   one.case_key.empty() ? "" : " (" + one.case_key + ")"));
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextWrapped("%s", one.to_be_reviewed ? "to be reviewed" : "in order");
  for (const auto& words : one.checks) {
    ImGui::TextWrapped("%s", words.c_str());
  }
  ImGui::TableNextColumn();
  if (one.number != 0 &&
      app.widgets.button(("sealed.open." + one.file).c_str(), fmt::format("Sitting {}", one.number))) {
    view.student = one.pseudonym;
    view.room.open_sitting(one.number);
    show_page(app, ClassPage::Sitting);
  }
  ImGui::TextWrapped("%s", one.kept.c_str());
  app.widgets.tell("sealed." + one.file,
                   fmt::format("{}; {}; {}", one.to_be_reviewed ? "to be reviewed" : "in order",
                               fmt::join(one.checks, "; "), one.kept));
}

void draw_table(App& app, ClassView& view, const classroom::SealedEnd& end) {
  if (end.sittings.empty() ||
      !ImGui::BeginTable("sealed", 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Learner and case", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  ImGui::TableSetupColumn("Checks", ImGuiTableColumnFlags_WidthStretch, 2.2F);
  ImGui::TableSetupColumn("In the store", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  table_headings();
  for (const auto& one : end.sittings) {
    draw_row(app, view, one);
  }
  ImGui::EndTable();
}

void draw_end(App& app, ClassView& view, const classroom::SealedEnd& end) {
  heading("The results opened last");
  app.widgets.tell("sealed.end", end.words());
  ImGui::TextWrapped("%s", end.words().c_str());
  if (end.rules_changed) {
    ImGui::TextWrapped("The marking rules have changed since the pack was sealed; the marks are by the rules "
                       "as now.");
  }
  draw_table(app, view, end);
  for (const auto& words : end.unreadable) {
    point("Not opened: " + words);
  }
  for (const auto& words : end.outstanding) {
    point("Nothing handed in: " + words);
  }
  if (!end.sittings.empty()) {
    ImGui::TextWrapped("\"To be reviewed\" says that something differs, and what; not why. A wrong closing "
                       "code may be a slip of the pen: talk to the learner first.");
  }
}

} // namespace

void draw_class_sealed(App& app) {
  ClassView& view = *app.classes;
  SealedView& asked = view.results;
  heading("Take in the sealed results of an examination");
  ImGui::TextWrapped("Every result is opened with your keys, checked, and marked from its log by replay. A "
                     "name alone lies beside the stores, in %s.",
                     view.folder.c_str());
  choose_place(app, "sealed.folder", "Folder of the results (*.result)", "", asked.folder);
  choose_place(app, "sealed.pack", "The pack (*.pack)", ".pack", asked.pack);
  choose_place(app, "sealed.keys", "Your keys (*.keys)", ".keys", asked.keys);
  choose_place(app, "sealed.cards", "Folder of the learners' cards; empty: devices are not checked", "",
               asked.cards);
  choose_place(app, "sealed.codes", "Register of closing codes (*.csv); empty: not checked", ".csv",
               asked.codes);
  (void)typed(app, "sealed.label", "A word for this lot, such as spring 2027", asked.label);
  const float room = ImGui::GetContentRegionAvail().x;
  const bool words = secret_line(app.widgets, "sealed.passphrase", asked.passphrase,
                                 std::min(room * 0.5F, ImGui::GetFontSize() * 26));
  ImGui::SameLine();
  ImGui::TextWrapped("Your passphrase; it is not shown and not kept");
  const bool named = !asked.folder.empty() && !asked.pack.empty() && !asked.keys.empty();
  const bool running = view.room.work_state().running;
  if (app.widgets.button("sealed.begin", "Open, check and take them in", named && words && !running)) {
    begin(view, app);
  }
  if (running) {
    ImGui::TextWrapped("%s", view.room.work_state().last.c_str());
  }
  if (view.room.sealed_end()) {
    draw_end(app, view, *view.room.sealed_end());
  }
}

} // namespace matula::window
