#include "engine/command/arguments.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/open_bench.hpp"
#include "engine/command/verbs.hpp"

#include <exception>
#include <iostream>

namespace {

using namespace matula::command;

struct Run {
  int operator()(const OpenBench& asked) const { return run_open_bench(asked, std::cerr); }
  int operator()(const Check& asked) const { return run_check(asked, std::cout, std::cerr); }
  int operator()(const Play& asked) const { return run_play(asked, std::cout, std::cerr); }
  int operator()(const Score& asked) const { return run_score(asked, std::cout, std::cerr); }
  int operator()(const Picture& asked) const { return run_picture(asked, std::cout, std::cerr); }
  int operator()(const Ladder& asked) const { return run_ladder(asked, std::cout, std::cerr); }
  int operator()(const Generate& asked) const { return run_generate(asked, std::cout, std::cerr); }
  int operator()(const Drill& asked) const { return run_drill(asked, std::cout, std::cerr); }
  int operator()(const Quiz& asked) const { return run_quiz(asked, std::cout, std::cerr); }
  int operator()(const Class& asked) const { return run_class(asked, std::cout, std::cerr); }
  int operator()(const Compose& asked) const { return run_compose(asked, std::cout, std::cerr); }
  int operator()(const Schema& asked) const { return run_schema(asked, std::cout, std::cerr); }
  int operator()(const Forms& asked) const { return run_forms(asked, std::cout, std::cerr); }
  int operator()(const Progress& asked) const { return run_progress(asked, std::cout, std::cerr); }
  int operator()(const Keys& asked) const { return run_keys(asked, std::cout, std::cerr); }
  int operator()(const Seal& asked) const { return run_seal(asked, std::cout, std::cerr); }
  int operator()(const ShowPack& asked) const { return run_show_pack(asked, std::cout, std::cerr); }
  int operator()(const Sit& asked) const { return run_sit(asked, std::cout, std::cerr); }
  int operator()(const OpenResults& asked) const { return run_open_results(asked, std::cout, std::cerr); }
  int operator()(const ReleaseResults& asked) const { return run_release(asked, std::cout, std::cerr); }
  int operator()(const Feedback& asked) const { return run_feedback(asked, std::cout, std::cerr); }
};

} // namespace

int main(int count, char** words) {
  try {
    const auto arguments = read_arguments(count, words);
    std::cout << arguments.out;
    std::cerr << arguments.err;
    return arguments.proceed ? std::visit(Run{}, arguments.verb) : arguments.exit_code;
  } catch (const std::exception& error) {
    std::cerr << "matula: " << error.what() << '\n';
    return exit_bad_input;
  }
}
