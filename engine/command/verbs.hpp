#pragma once

#include "engine/command/arguments.hpp"

#include <iosfwd>

namespace matula::command {

/// Every verb prints its result to `out`, what is wrong to `err`, and gives the exit code.
int run_check(const Check& asked, std::ostream& out, std::ostream& err);
int run_play(const Play& asked, std::ostream& out, std::ostream& err);
int run_score(const Score& asked, std::ostream& out, std::ostream& err);
int run_picture(const Picture& asked, std::ostream& out, std::ostream& err);
int run_ladder(const Ladder& asked, std::ostream& out, std::ostream& err);
int run_generate(const Generate& asked, std::ostream& out, std::ostream& err);
int run_drill(const Drill& asked, std::ostream& out, std::ostream& err);
int run_quiz(const Quiz& asked, std::ostream& out, std::ostream& err);
int run_class(const Class& asked, std::ostream& out, std::ostream& err);
int run_compose(const Compose& asked, std::ostream& out, std::ostream& err);
int run_schema(const Schema& asked, std::ostream& out, std::ostream& err);
int run_forms(const Forms& asked, std::ostream& out, std::ostream& err);
int run_progress(const Progress& asked, std::ostream& out, std::ostream& err);
int run_keys(const Keys& asked, std::ostream& out, std::ostream& err);
int run_seal(const Seal& asked, std::ostream& out, std::ostream& err);
int run_show_pack(const ShowPack& asked, std::ostream& out, std::ostream& err);
int run_sit(const Sit& asked, std::ostream& out, std::ostream& err);
int run_open_results(const OpenResults& asked, std::ostream& out, std::ostream& err);
int run_release(const ReleaseResults& asked, std::ostream& out, std::ostream& err);
int run_feedback(const Feedback& asked, std::ostream& out, std::ostream& err);

} // namespace matula::command
