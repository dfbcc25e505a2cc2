#include "wire/app_json.h"

#include "wire/problems_object.h"

namespace keenfall::wire {

std::string app_to_json(const AppTold& app) {
  Json document = Json::object();
  document["program_version"] = app.program_version;
  if (app.notebook) {
    Json notebook = Json::object();
    notebook["name"] = app.notebook->name;
    notebook["path"] = app.notebook->path;
    notebook["uid"] = app.notebook->uid;
    notebook["may_write"] = app.notebook->may_write;
    put_text(notebook, "why_not", app.notebook->why_not);
    document["notebook"] = notebook;
  }
  document["cautions"] = sentences_json(app.cautions);
  document["folder"] = app.folder;
  return document_of(document);
}

}  // namespace keenfall::wire
