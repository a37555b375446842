package org.taketally.notebook.kernel.engine.threads;

import java.io.File;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Iterator;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.execution.LoaderDelegate;
import jdk.jshell.spi.ExecutionControl.ClassBytecodes;
import jdk.jshell.spi.ExecutionControl.ClassInstallException;
import jdk.jshell.spi.ExecutionControl.InternalException;
import org.taketally.notebook.kernel.engine.source.SnippetNames;

/**
 * Classes compiled from cells. Each load gets a class loader of its own that holds on to the
 * classes its code names; a class replaced by a newer version of the same snippet is let go, so
 * that it and the data of its variables are collected once no living code refers to them.
 */
public final class SnippetClasses implements LoaderDelegate {

  private static final String EXIT = ExitRefused.class.getName().replace('.', '/');

  /** {@code REPL.$JShell$12B$Inner}: snippet 12, second version. */
  private static final Pattern VERSION =
      Pattern.compile("REPL\\.\\$JShell\\$(\\d+(?:_\\d+)*)([A-Z]*)(?:\\$.*)?");

  /** Jars and folders a user adds. */
  private static final class ExtraClasses extends URLClassLoader {

    ExtraClasses() {
      super("added to the notebook", new URL[0], SnippetClasses.class.getClassLoader());
    }

    @Override
    protected void addURL(URL url) {
      super.addURL(url);
    }
  }

  /** The classes of one load. */
  private final class Load extends ClassLoader {

    private final Map<String, byte[]> own = new HashMap<>();
    private final Map<String, Class<?>> named = new HashMap<>();

    Load(ClassBytecodes[] classes) {
      super(extra);
      for (ClassBytecodes each : classes) {
        SnippetClassFile file = new SnippetClassFile(each.bytecodes());
        for (String name : file.classNames()) {
          if (current.containsKey(name)) {
            named.put(name, current.get(name));
          }
        }
        file.openToOtherLoaders();
        file.sendCalls("java/lang/System", "exit", EXIT);
        own.put(each.name(), file.bytes());
      }
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      if (!SnippetNames.isSnippetClass(name)) {
        return super.loadClass(name, resolve);
      }
      synchronized (getClassLoadingLock(name)) {
        Class<?> loaded = findLoadedClass(name);
        return loaded != null ? loaded : findClass(name);
      }
    }

    @Override
    protected Class<?> findClass(String name) throws ClassNotFoundException {
      byte[] bytes = own.get(name);
      if (bytes != null) {
        return defineClass(name, bytes, 0, bytes.length);
      }
      Class<?> found = named.containsKey(name) ? named.get(name) : current.get(name);
      if (found == null) {
        throw new ClassNotFoundException(name);
      }
      return found;
    }
  }

  private final ExtraClasses extra = new ExtraClasses();
  private final Map<String, Class<?>> current = new ConcurrentHashMap<>();
  private ClassLoader latest = extra;

  /** The loader for code that has no class of its own: sees the latest classes and added jars. */
  public ClassLoader latest() {
    return latest;
  }

  @Override
  public void load(ClassBytecodes[] classes) throws ClassInstallException {
    boolean[] loaded = new boolean[classes.length];
    try {
      Load load = new Load(classes);
      for (int i = 0; i < classes.length; i++) {
        forgetOlderThan(classes[i].name());
        current.put(classes[i].name(), load.loadClass(classes[i].name()));
        loaded[i] = true;
      }
      latest = load;
    } catch (ClassNotFoundException | LinkageError failure) {
      throw new ClassInstallException("load: " + failure.getMessage(), loaded);
    }
  }

  private void forgetOlderThan(String name) {
    Matcher newer = VERSION.matcher(name);
    if (!newer.matches() || newer.group(2).isEmpty()) {
      return;
    }
    for (Iterator<String> names = current.keySet().iterator(); names.hasNext(); ) {
      Matcher older = VERSION.matcher(names.next());
      if (older.matches()
          && older.group(1).equals(newer.group(1))
          && !older.group(2).equals(newer.group(2))) {
        names.remove();
      }
    }
  }

  /** Lets go of a class no later snippet can name, such as that of a statement. */
  public void forget(String name) {
    current.remove(name);
  }

  @Override
  public Class<?> findClass(String name) throws ClassNotFoundException {
    Class<?> found = current.get(name);
    if (found == null) {
      throw new ClassNotFoundException(name);
    }
    return found;
  }

  @Override
  public void addToClasspath(String classpath) throws InternalException {
    try {
      for (String place : classpath.split(File.pathSeparator)) {
        extra.addURL(Path.of(place).toUri().toURL());
      }
    } catch (MalformedURLException wrong) {
      throw new InternalException(wrong.toString());
    }
  }

  @Override
  public void classesRedefined(ClassBytecodes[] classes) {
    throw new UnsupportedOperationException("classes are replaced, never redefined in place");
  }
}
