#include "engine/desk/exam_run.hpp"

#include "engine/desk/wall_clock.hpp"
#include "engine/examination/result.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/seal/frame.hpp"
#include "engine/sitting/log.hpp"
#include "engine/strict/file.hpp"

namespace matula::desk {

namespace {

namespace fs = std::filesystem;

std::string read(const fs::path& file) {
  std::string text;
  (void)strict::read_text(file, text); // What cannot be read is empty, and then does not fit its signatures.
  return text;
}

} // namespace

fs::path chain_of(const fs::path& log_file) {
  return fs::path(log_file).replace_extension(".chain");
}

fs::path log_of(const examination::Seat& seat, const fs::path& folder) {
  constexpr std::size_t id_letters = 8;
  const std::string id = seal::hex(seat.head.id).substr(0, id_letters);
  return folder / (seat.pseudonym + "-" + seat.label + "-" + id + ".jsonl");
}

seal::Maybe<std::unique_ptr<ExamRun>> ExamRun::open(const examination::Seat& seat, const seal::Device& device,
                                                    const fs::path& log_file) {
  const auto log = sitting::read_log(log_file);
  if (!log) {
    return tl::make_unexpected(log.error());
  }
  std::unique_ptr<ExamRun> run(new ExamRun(seat, device, log_file));
  const examination::ChainStart start{
      seat.pack_hash,           seat.nonce,          seat.pseudonym,  seat.label,
      run->device_.open_half(), log->header.program, log->header.seed};
  auto chain =
      examination::ChainWriter::resume(chain_of(log_file), start, read(log_file), run->device_, now_s);
  if (!chain) {
    return tl::make_unexpected(chain.error());
  }
  run->chain_ = std::move(*chain);
  return run;
}

std::string ExamRun::close() {
  if (!chain_->handed_in()) {
    if (std::string problem = chain_->checkpoint("handed in"); !problem.empty()) {
      return problem;
    }
  }
  examination::HandedIn result;
  result.pack = seat_.head.id;
  result.pseudonym = seat_.pseudonym;
  result.label = seat_.label;
  result.program = sitting::header_for(scenario::Scenario{}).program;
  result.log = read(log_file_);
  result.chain = read(chain_of(log_file_));
  const fs::path file = fs::path(log_file_).replace_extension(".result");
  const auto sealed = examination::seal_result(std::move(result), device_, seat_.head.sealing, file.string());
  const auto problems = sealed ? seal::write_bytes(file, *sealed) : sealed.error();
  if (!problems.empty()) {
    return "Handed in, but the result could not be written: " + scenario::to_text(problems) +
           "Open the examination again to write it once more.";
  }
  closed_ = Closed{file, examination::closing_code(chain_->last())};
  return "";
}

} // namespace matula::desk
