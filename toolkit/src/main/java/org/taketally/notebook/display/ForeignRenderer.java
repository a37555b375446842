package org.taketally.notebook.display;

import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.Arrays;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * A renderer of the older base library ({@code io.github.spencerpark.jupyter.kernel.display}), or
 * one grown from it. The toolkit isn't built against it, so its methods are called by name.
 */
final class ForeignRenderer {

  private final Object renderer;
  private final Method createRegistration;

  ForeignRenderer(Object renderer) {
    this.renderer = renderer;
    try {
      createRegistration = renderer.getClass().getMethod("createRegistration", Class.class);
    } catch (NoSuchMethodException other) {
      throw new IllegalArgumentException(
          "%s is no renderer of IJava's line; expected what its kernel's getRenderer() gives"
              .formatted(renderer.getClass().getName()),
          other);
    }
  }

  void register(Class<?> type, Function<Object, Shown> display) {
    try {
      Object registration = createRegistration.invoke(renderer, type);
      registration
          .getClass()
          .getMethod("preferring", String[].class)
          .invoke(registration, (Object) new String[] {"text/html"});
      Method register = method(registration, "register");
      Class<?> function = register.getParameterTypes()[0];
      Object proxy =
          Proxy.newProxyInstance(
              function.getClassLoader(),
              new Class<?>[] {function},
              (self, called, values) -> {
                render(display.apply(values[0]), values[1]);
                return null;
              });
      register.invoke(registration, proxy);
    } catch (ReflectiveOperationException other) {
      throw new IllegalArgumentException(
          "this kernel's renderer is of another version: " + other, other);
    }
  }

  private static void render(Shown shown, Object context) throws ReflectiveOperationException {
    if (shown == null) {
      return;
    }
    Object container = context.getClass().getMethod("getOutputContainer").invoke(context);
    put(container, "putHTML", shown::page);
    put(container, "putText", shown::text);
  }

  private static void put(Object container, String method, Supplier<String> value)
      throws ReflectiveOperationException {
    container.getClass().getMethod(method, String.class).invoke(container, value.get());
  }

  private static Method method(Object owner, String name) throws NoSuchMethodException {
    return Arrays.stream(owner.getClass().getMethods())
        .filter(each -> each.getName().equals(name) && each.getParameterCount() == 1)
        .findFirst()
        .orElseThrow(() -> new NoSuchMethodException(name));
  }
}
