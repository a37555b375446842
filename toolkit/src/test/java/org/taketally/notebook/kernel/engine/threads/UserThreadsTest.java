package org.taketally.notebook.kernel.engine.threads;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.taketally.notebook.kernel.engine.output.Stopped;

/** Code on threads of its own. */
@Timeout(60)
class UserThreadsTest {

  private final UserThreads threads = new UserThreads(null, () -> null);

  private Object run(java.util.concurrent.Callable<?> code) throws Throwable {
    return threads.run(code, getClass().getClassLoader());
  }

  @Test
  void gives_what_code_returns_and_throws() throws Throwable {
    assertThat(run(() -> 7)).isEqualTo(7);
    assertThat(run(() -> null)).isNull();
    assertThatThrownBy(
            () ->
                run(
                    () -> {
                      throw new AssertionError("thrown");
                    }))
        .hasMessage("thrown");
  }

  @Test
  void code_that_can_not_be_stopped_is_given_up() throws Exception {
    AtomicBoolean enough = new AtomicBoolean();
    AtomicInteger attempts = new AtomicInteger();
    interruptSoon(thread -> attempts.incrementAndGet());
    Throwable thrown =
        catchThrowable(
            () ->
                run(
                    () -> {
                      while (!enough.get()) {
                        Thread.onSpinWait();
                      }
                      return 1;
                    }));
    enough.set(true);
    assertThat(thrown)
        .isInstanceOf(Stopped.class)
        .hasMessage(
            "enough waited, but its code catches every error and runs on; restart the kernel");
    assertThat(attempts.get()).isPositive();
  }

  private void interruptSoon(UserThreads.ForcedStop force) {
    new Thread(
            () -> {
              try {
                Thread.sleep(200);
              } catch (InterruptedException nobodyDoes) {
                return;
              }
              threads.interrupt("enough waited", force);
            })
        .start();
  }

  @Test
  void force_is_not_used_on_code_that_ends_by_itself() {
    AtomicInteger attempts = new AtomicInteger();
    interruptSoon(thread -> attempts.incrementAndGet());
    assertThatThrownBy(
            () ->
                run(
                    () -> {
                      Thread.sleep(30_000);
                      return 1;
                    }))
        .isInstanceOf(Stopped.class)
        .hasMessage("enough waited");
    assertThat(attempts.get()).isZero();
  }

  @Test
  void an_interrupt_that_came_before_the_code_began_counts() {
    UserThreads interrupted = new UserThreads(null, () -> "too late");
    assertThatThrownBy(() -> interrupted.run(() -> 1, getClass().getClassLoader()))
        .isInstanceOf(Stopped.class)
        .hasMessage("too late");
  }

  @Test
  void asks_only_while_code_runs() {
    assertThatThrownBy(() -> threads.ask("who? ", false))
        .hasMessage("input can be asked for only while a cell runs");
  }
}
