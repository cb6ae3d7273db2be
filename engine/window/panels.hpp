#pragma once

#include "engine/render/rect.hpp"
#include "engine/window/app.hpp"
#include "engine/window/regions.hpp"

namespace matula::window {

// Every part of the window, one small file each. A part shows what the desk shows and hands it events; it
// holds no rule of the trade and changes nothing itself.

void draw_start_screen(App& app, const render::Rect& area);
void draw_strip(App& app, const render::Rect& area);
void draw_bench(App& app, const render::Rect& area);
void draw_counter(App& app, const render::Rect& area); ///< Form, label and container, in the bench's place.
/// The same of any delivery.
void draw_delivery(const reception::Shown& shown, const render::Rect& area);
void draw_message(App& app, const render::Rect& area);
void draw_marks_screen(App& app, const render::Rect& area);
/// Every ledger with its marks: part of the marks screen and of a quiz's results.
void draw_ledgers(const scoring::Report& report);
void draw_marks_sheet(const scoring::Report& report); ///< Part of the marks screen.
void draw_text_size(App& app);                        ///< Part of the strip and of the start screen.
void draw_aids(App& app);          ///< The other aids: part of the start screen and of the help.
void draw_hue_tip(const App& app); ///< The colour under the pointer, when that is wanted.
void draw_beside_choice(App& app); ///< Part of the look group.
void draw_beside(App& app, const render::Rect& bench,
                 const render::Rect& hand); ///< Two vessels large, over the bench.
/// Vessels large side by side in the room that is left.
void draw_picture(App& app, int slot, const std::vector<appearance::Appearance>& vessels);
void draw_guide_box(App& app); ///< Part of the side panel, where the case has a guide.

// Tabs of the side panel.
void draw_do_tab(App& app);
void draw_papers_tab(App& app);
void draw_worksheet_tab(App& app);
void draw_curve_sheet(App& app, const scenario::AskedTest& test); ///< Part of the worksheet.
void draw_help_tab(App& app);
void draw_controls_tab(App& app);
void draw_float_record(App& app); ///< Part of the control record.
void draw_request_tab(App& app);
void draw_reception_tab(App& app);

// Groups of the "Do" tab.
void draw_vessel_group(App& app);
void draw_pour_group(App& app);
void draw_bottle_group(App& app);
void draw_mix_group(App& app);
void draw_heat_group(App& app);
void draw_look_group(App& app);
void draw_float_group(App& app);
void draw_safety_group(App& app);
void draw_measure_group(App& app);
void draw_separate_group(App& app);
void draw_sulphur_group(App& app);
void draw_esbach_group(App& app);
void draw_waste_group(App& app);

/// Draws whichever screen is due into a window of this size.
void draw_frame(App& app, float width, float height);

/// Shortcuts that work whenever no text is being typed.
void handle_keys(App& app);

} // namespace matula::window
