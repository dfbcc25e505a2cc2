#include "server/failure.h"

#include "workbench/notebook_trouble.h"

#include <exception>
#include <new>
#include <string>

namespace keenfall::server {

namespace {

constexpr int kOurFault = 500;
constexpr int kNotNow = 503;

Refusal failed_with(int status, const std::string& sentence) {
  return {.status = status, .kind = "failed", .sentence = sentence};
}

}  // namespace

std::optional<Refusal> failure_of(const std::function<void()>& work) {
  try {
    work();
    return std::nullopt;
  } catch (const workbench::NotebookTrouble& trouble) {
    return failed_with(kNotNow, trouble.what());
  } catch (const std::bad_alloc&) {
    return failed_with(kNotNow, "There is not enough memory for this.");
  } catch (const std::exception& fault) {
    return failed_with(
        kOurFault,
        std::string("This is a fault in Keenfall, not in what you gave it: ") + fault.what() + ".");
  }
}

}  // namespace keenfall::server
