#include "engine/window/exam_view.hpp"

#include "engine/desk/wall_clock.hpp"
#include "engine/window/fonts.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

void draw_packs(App& app, ExamView& view) {
  ImGui::TextUnformatted("The pack you were given: its fingerprint is that of the sheet in the room.");
  for (int i = 0; i < static_cast<int>(view.packs.size()); ++i) {
    const desk::PackOnOffer& pack = view.packs[static_cast<std::size_t>(i)];
    if (!pack.problem.empty()) {
      ImGui::TextWrapped("%s cannot be used: %s", pack.file.filename().c_str(), pack.problem.c_str());
      continue;
    }
    const std::string label =
        fmt::format("{}, {} min  ·  fingerprint {}", pack.title, pack.minutes, pack.fingerprint);
    if (app.widgets.choice(fmt::format("exam.pack.{}", i + 1).c_str(), label, view.pack == i)) {
      view.pack = i;
    }
  }
}

void draw_devices(App& app, ExamView& view) {
  ImGui::TextUnformatted("Your device key.");
  for (int i = 0; i < static_cast<int>(view.devices.size()); ++i) {
    const desk::DeviceOnOffer& device = view.devices[static_cast<std::size_t>(i)];
    if (!device.problem.empty()) {
      ImGui::TextWrapped("%s cannot be used: %s", device.file.filename().c_str(), device.problem.c_str());
      continue;
    }
    if (app.widgets.choice(fmt::format("exam.device.{}", i + 1).c_str(), device.pseudonym,
                           view.device == i)) {
      view.device = i;
    }
  }
}

void enter(App& app, ExamView& view) {
  auto room = desk::ExamRoom::open(view.packs[static_cast<std::size_t>(view.pack)].file,
                                   view.devices[static_cast<std::size_t>(view.device)].file, view.passphrase,
                                   view.session_code, exam_folder(app));
  if (!room) {
    view.refusal = scenario::to_text(room.error());
    return;
  }
  view.refusal.clear();
  view.passphrase.clear();
  view.room.emplace(std::move(*room));
  view.cases = view.room->cases();
  view.begun_s = view.room->begun_s();
  app.focus_screen = 3;
  app.say("Work the cases in any order. There are no marks and no help until they are released.");
}

void draw_entry(App& app, ExamView& view) {
  heading("An examination");
  ImGui::TextWrapped("Put the pack (a file that ends in .pack) and your device key (.device) into %s.",
                     exam_folder(app).c_str());
  if (app.widgets.button("exam.look", "Look again")) {
    open_exam(app);
  }
  if (view.packs.empty() || view.devices.empty()) {
    ImGui::TextWrapped("%s", view.packs.empty() ? "There is no pack yet." : "There is no device key yet.");
    return;
  }
  draw_packs(app, view);
  draw_devices(app, view);
  ImGui::TextUnformatted("The words that are read out in the room.");
  const float width = ImGui::GetFontSize() * 14;
  (void)app.widgets.line("exam.passphrase", view.passphrase, width);
  ImGui::SameLine();
  ImGui::TextUnformatted("Class passphrase");
  (void)app.widgets.line("exam.session", view.session_code, width);
  ImGui::SameLine();
  ImGui::TextUnformatted("Session code");
  if (app.widgets.button("exam.open", "Open the pack (takes a second)")) {
    enter(app, view);
  }
  app.widgets.tell("exam.refused", view.refusal);
  ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_CheckMark));
  ImGui::TextWrapped("%s", view.refusal.c_str());
  ImGui::PopStyleColor();
}

void draw_cases(App& app, ExamView& view) {
  heading(view.room->title().c_str());
  ImGui::Text("%s  ·  %u minutes for all", view.room->pseudonym().c_str(), view.room->minutes());
  const std::string left = say_time_left(app);
  ImGui::TextWrapped("%s", left.empty() ? "The time begins with the first case you begin."
                                        : (left + ". What is handed in later is taken, and its time is told "
                                                  "to your instructor.")
                                              .c_str());
  app.widgets.tell("time_left", left);
  std::string chosen;
  for (const desk::ExamCase& one : view.cases) {
    const char* words = one.handed_in ? "Show the closing code" : one.begun ? "Go on" : "Begin";
    if (app.widgets.button(("exam.case." + one.label).c_str(), words)) {
      chosen = one.label;
    }
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    ImGui::Text("%s%s", one.label.c_str(), one.handed_in ? ": handed in" : one.begun ? ": begun" : "");
  }
  if (app.widgets.button("exam.leave", "Leave the examination")) {
    view.room.reset();
    return;
  }
  if (!chosen.empty()) {
    app.sit(view.room->sit(app.ground, chosen));
    view.begun_s = view.room->begun_s();
  }
}

} // namespace

std::string say_time_left(const App& app) {
  if (!app.exam || !app.exam->room || !app.exam->begun_s) {
    return "";
  }
  constexpr std::int64_t s_a_minute = 60;
  const std::int64_t minutes = app.exam->room->minutes();
  const std::int64_t left_s = *app.exam->begun_s + minutes * s_a_minute - desk::now_s();
  return left_s > 0 ? fmt::format("{} of {} min left", (left_s + s_a_minute - 1) / s_a_minute, minutes)
                    : fmt::format("The {} min are over, by {} min", minutes, -left_s / s_a_minute);
}

double exam_rest_s(const App& app) {
  constexpr double often_enough_s = 10;
  return say_time_left(app).empty() ? -1 : often_enough_s;
}

std::filesystem::path exam_folder(const App& app) {
  return app.options.sittings / "examination";
}

void open_exam(App& app) {
  if (!app.exam) {
    app.exam = std::make_shared<ExamView>();
  }
  std::error_code ignored; // A folder that cannot be made holds nothing, and the screen says so.
  std::filesystem::create_directories(exam_folder(app), ignored);
  app.exam->packs = desk::packs_in(exam_folder(app));
  app.exam->devices = desk::devices_in(exam_folder(app));
  app.exam->pack = app.exam->device = 0;
}

void draw_exam(App& app) {
  ExamView& view = *app.exam;
  if (view.room) {
    draw_cases(app, view);
  } else {
    draw_entry(app, view);
  }
}

void draw_closed_screen(App& app, const render::Rect& area) {
  const float width = std::min(area.w, ImGui::GetFontSize() * 44);
  const Pane pane("closed", {area.x + (area.w - width) / 2, area.y, width, area.h});
  if (app.focus_screen > 0) {
    --app.focus_screen;
    app.widgets.focus_next();
  }
  if (app.widgets.button("closed.back", "Back to the examination")) {
    app.desk.reset();
    app.scene.reset();
    app.message.clear();
    app.focus_screen = 3;
    app.exam->cases = app.exam->room->cases();
    return;
  }
  heading("Handed in");
  if (!app.desk->closed()) {
    ImGui::TextWrapped("%s",
                       app.message.c_str()); // Why it could not be closed; going on with it tries again.
    return;
  }
  const desk::Closed& closed = *app.desk->closed();
  ImGui::TextWrapped("Copy this closing code into the register by hand, and let it be seen:");
  push_title_font();
  ImGui::TextUnformatted(closed.closing_code.c_str());
  ImGui::PopFont();
  app.widgets.tell("closing_code", closed.closing_code);
  ImGui::TextWrapped(
      "Your sitting lies in %s, sealed to your instructor: this file is collected. Changes made after the "
      "closing code are detected.",
      closed.result_file.c_str());
  ImGui::TextWrapped("Marks and reasons come with the score sheet, once your instructor releases them.");
}

} // namespace matula::window
