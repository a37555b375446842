package org.taketally.notebook.jupyter;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.Callable;

/**
 * Chromium, driven by the W3C WebDriver protocol over loopback.
 *
 * @see <a href="https://www.w3.org/TR/webdriver2/">WebDriver</a>
 */
public final class Browser {

  public static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  public static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  /** Keys of WebDriver's list. */
  public static final String TAB = "\uE004";

  static final String SHIFT = "\uE008";
  static final String ENTER = "\uE007";

  private static final String ELEMENT = "element-6066-11e4-a52e-4f735466cecf";
  private static final Duration PATIENCE = Duration.ofMinutes(3);

  private final HttpClient client = HttpClient.newHttpClient();
  private final Process driver;
  private final String session;

  private Browser(Process driver, int port, JsonObject wishes) throws Exception {
    this.driver = driver;
    String sessions = "http://127.0.0.1:%d/session".formatted(port);
    JsonObject begun =
        await("the browser's driver", () -> send("POST", sessions, wishes)).getAsJsonObject();
    session = sessions + "/" + begun.get("sessionId").getAsString();
  }

  /** A window of 1200 by 1000 pixels, its profile and the driver's log in the folder. */
  public static Browser open(Path folder) throws Exception {
    int port = freePort();
    Process driver =
        new ProcessBuilder(DRIVER.toString(), "--port=" + port)
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("chromedriver.txt").toFile())
            .start();
    JsonArray arguments = new JsonArray();
    arguments.add("--headless=new");
    arguments.add("--no-sandbox");
    arguments.add("--disable-gpu");
    arguments.add("--disable-background-networking");
    arguments.add("--no-first-run");
    arguments.add("--window-size=1200,1000");
    arguments.add("--user-data-dir=" + folder.resolve("profile"));
    JsonObject options = new JsonObject();
    options.addProperty("binary", CHROMIUM.toString());
    options.add("args", arguments);
    JsonObject wishes = with("goog:chromeOptions", options);
    wishes.addProperty("browserName", "chrome");
    try {
      return new Browser(driver, port, with("capabilities", with("alwaysMatch", wishes)));
    } catch (Exception failed) {
      driver.destroyForcibly();
      throw failed;
    }
  }

  static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  public void go(String address) throws Exception {
    JsonObject page = new JsonObject();
    page.addProperty("url", address);
    send("POST", session + "/url", page);
  }

  /** The value of a JavaScript expression. */
  public JsonElement value(String expression) throws Exception {
    JsonObject script = new JsonObject();
    script.addProperty("script", "return " + expression);
    script.add("args", new JsonArray());
    return send("POST", session + "/execute/sync", script);
  }

  /** Waits until a JavaScript expression is true. */
  void until(String expression) throws Exception {
    await(
        expression,
        () -> {
          if (!value("Boolean(" + expression + ")").getAsBoolean()) {
            throw new IOException("not yet");
          }
          return true;
        });
  }

  /** Clicks on what a CSS selector finds, as soon as it can be clicked. */
  void click(String selector) throws Exception {
    JsonObject search = new JsonObject();
    search.addProperty("using", "css selector");
    search.addProperty("value", selector);
    await(
        "a click on " + selector,
        () -> {
          JsonObject found = send("POST", session + "/element", search).getAsJsonObject();
          String element = session + "/element/" + found.get(ELEMENT).getAsString();
          return send("POST", element + "/click", new JsonObject());
        });
  }

  /** Types where the cursor is, one key after the other. */
  void type(String text) throws Exception {
    JsonArray strokes = new JsonArray();
    for (String key : text.split("")) {
      stroke(strokes, "keyDown", key);
      stroke(strokes, "keyUp", key);
    }
    perform(strokes);
  }

  /** Presses keys together. */
  public void press(String... keys) throws Exception {
    JsonArray strokes = new JsonArray();
    List.of(keys).forEach(key -> stroke(strokes, "keyDown", key));
    List.of(keys).forEach(key -> stroke(strokes, "keyUp", key));
    perform(strokes);
  }

  private static void stroke(JsonArray strokes, String type, String key) {
    JsonObject stroke = new JsonObject();
    stroke.addProperty("type", type);
    stroke.addProperty("value", key);
    strokes.add(stroke);
  }

  private void perform(JsonArray strokes) throws Exception {
    JsonObject keyboard = with("actions", strokes);
    keyboard.addProperty("type", "key");
    keyboard.addProperty("id", "keyboard");
    JsonArray sources = new JsonArray();
    sources.add(keyboard);
    send("POST", session + "/actions", with("actions", sources));
  }

  /** What the browser answers to a command of its own, such as {@code Page.printToPDF}. */
  public JsonObject command(String name, JsonObject parameters) throws Exception {
    JsonObject command = with("params", parameters);
    command.addProperty("cmd", name);
    return send("POST", session + "/goog/cdp/execute", command).getAsJsonObject();
  }

  /** A picture of the window. */
  void photograph(Path file) throws Exception {
    String picture = send("GET", session + "/screenshot", null).getAsString();
    Files.createDirectories(file.getParent());
    Files.write(file, Base64.getDecoder().decode(picture));
  }

  private static JsonObject with(String name, JsonElement value) {
    JsonObject object = new JsonObject();
    object.add(name, value);
    return object;
  }

  private JsonElement send(String method, String address, JsonObject body) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(address))
            .timeout(PATIENCE)
            .method(
                method,
                body == null ? BodyPublishers.noBody() : BodyPublishers.ofString(body.toString()))
            .build();
    String answer = client.send(request, BodyHandlers.ofString()).body();
    JsonElement value = JsonParser.parseString(answer).getAsJsonObject().get("value");
    if (value.isJsonObject() && value.getAsJsonObject().has("error")) {
      throw new IOException(value.getAsJsonObject().get("message").getAsString());
    }
    return value;
  }

  /** Tries again until it works. */
  static <T> T await(String what, Callable<T> attempt) throws Exception {
    Instant end = Instant.now().plus(PATIENCE);
    while (true) {
      try {
        return attempt.call();
      } catch (IOException failed) {
        if (Instant.now().isAfter(end)) {
          throw new AssertionError("waited in vain for " + what, failed);
        }
        Thread.sleep(50);
      }
    }
  }

  public void quit() throws Exception {
    try {
      send("DELETE", session, null);
    } finally {
      driver.destroy();
    }
  }
}
