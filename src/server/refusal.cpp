#include "server/refusal.h"

#include "wire/problems_json.h"

namespace keenfall::server {

bool is_api(std::string_view path) { return path == "/api" || path.starts_with("/api/"); }

HttpResponse refused(const Refusal& refusal, std::string_view path) {
  if (is_api(path)) {
    return {.status = refusal.status,
            .content_type = "application/json",
            .body = wire::refusal_to_json(refusal.kind, refusal.sentence)};
  }
  return {.status = refusal.status,
          .content_type = "text/plain; charset=utf-8",
          .body = refusal.sentence + "\n"};
}

}  // namespace keenfall::server
