package org.taketally.notebook.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.Optional;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.Output;
import org.taketally.notebook.kernel.wire.MalformedMessage;
import org.taketally.notebook.kernel.wire.Message;
import org.taketally.notebook.kernel.wire.MessageSocket;
import org.taketally.notebook.kernel.wire.Publisher;

/** Publishes what cells say, as output of the cell that runs or ran last. */
final class KernelOutput implements Output {

  private static final int ANSWER_CHECK_MILLISECONDS = 50;

  private final Publisher publisher;
  private final MessageSocket stdin;
  private volatile Message request;
  private volatile boolean silent;
  private JsonArray pages = new JsonArray();

  /**
   * Output of one kernel.
   *
   * @param publisher carries it
   * @param stdin asks the user; used only by the thread that runs cells
   */
  KernelOutput(Publisher publisher, MessageSocket stdin) {
    this.publisher = publisher;
    this.stdin = stdin;
  }

  void cellBegins(Message executeRequest) {
    silent = Json.flag(executeRequest.content(), "silent", false);
    request = executeRequest;
    pages = new JsonArray();
  }

  /** Pages asked for since the cell began, as payload of the reply. */
  JsonArray pages() {
    return pages;
  }

  private void publish(String type, JsonObject content) {
    if (request != null && !silent) {
      publisher.publish(type, request.header(), content);
    }
  }

  @Override
  public void print(String stream, String text) {
    if (request != null && !silent) {
      publisher.print(request.header(), stream, text);
    }
  }

  void input(String code, int count) {
    JsonObject content = new JsonObject();
    content.addProperty("code", code);
    content.addProperty("execution_count", count);
    publish("execute_input", content);
  }

  void result(Bundle bundle, int count) {
    JsonObject content = content(bundle);
    content.addProperty("execution_count", count);
    publish("execute_result", content);
  }

  void error(CellError error) {
    publish("error", errorContent(error));
  }

  static JsonObject errorContent(CellError error) {
    JsonObject content = new JsonObject();
    content.addProperty("ename", error.name());
    content.addProperty("evalue", error.message());
    JsonArray lines = new JsonArray();
    error.traceback().forEach(lines::add);
    content.add("traceback", lines);
    return content;
  }

  static JsonObject content(Bundle bundle) {
    JsonObject content = new JsonObject();
    content.add("data", bundle.data());
    content.add("metadata", bundle.metadata());
    JsonObject passing = new JsonObject();
    if (!bundle.displayId().isEmpty()) {
      passing.addProperty("display_id", bundle.displayId());
    }
    content.add("transient", passing);
    return content;
  }

  @Override
  public void display(Bundle bundle) {
    publish("display_data", content(bundle));
  }

  @Override
  public void update(Bundle bundle) {
    publish("update_display_data", content(bundle));
  }

  @Override
  public void clear(boolean wait) {
    JsonObject content = new JsonObject();
    content.addProperty("wait", wait);
    publish("clear_output", content);
  }

  @Override
  public void page(Bundle bundle) {
    JsonObject page = new JsonObject();
    page.addProperty("source", "page");
    page.add("data", bundle.data());
    page.addProperty("start", 0);
    pages.add(page);
  }

  /** As with questions: a frontend that takes input has somebody before it. */
  @Override
  public boolean isWatched() {
    return request != null && !silent && Json.flag(request.content(), "allow_stdin", false);
  }

  @Override
  public String ask(String prompt, boolean secret, Question question) throws IOException {
    if (!Json.flag(request.content(), "allow_stdin", false)) {
      throw new IOException("this frontend does not take input");
    }
    JsonObject content = new JsonObject();
    content.addProperty("prompt", prompt);
    content.addProperty("password", secret);
    while (answer(0).isPresent()) {
      // an answer that came too late for an earlier question
    }
    stdin.send(request.answer("input_request", content));
    while (!question.withdrawn()) {
      Optional<Message> reply = answer(ANSWER_CHECK_MILLISECONDS);
      if (reply.isPresent() && reply.get().type().equals("input_reply")) {
        return Json.text(reply.get().content(), "value", "");
      }
    }
    throw new IOException("the cell was stopped while it waited for input");
  }

  private Optional<Message> answer(int milliseconds) {
    try {
      return stdin.receive(milliseconds);
    } catch (MalformedMessage ignored) {
      return Optional.empty();
    }
  }
}
