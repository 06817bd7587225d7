package org.geneticsrules.examples;

import java.io.Console;
import java.io.PrintWriter;
import java.lang.reflect.InvocationTargetException;
import java.util.Locale;
import org.geneticsrules.answer.recorded.Progress;

/** A line on the error stream that says how far a long question has come. Not thread-safe. */
final class ProgressBar implements Progress {

    private static final int WIDTH = 40;

    private final String task;
    private final PrintWriter err;
    private int last = -1;
    private int left;
    private int told;

    private ProgressBar(String task, PrintWriter err) {
        this.task = task;
        this.err = err;
    }

    /** A bar if somebody sees it: on a terminal, or if it was asked for; else nothing is written. */
    static Progress of(String task, PrintWriter err, String when) {
        boolean shown = when.equals("always") || (when.equals("auto") && isTerminal());
        return shown ? new ProgressBar(task, err) : Progress.NONE;
    }

    /** From Java 22 on there is a console without a terminal too, which says so. */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean isTerminal() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return Boolean.TRUE.equals(Console.class.getMethod("isTerminal").invoke(console));
        } catch (NoSuchMethodException before22) {
            return true;
        } catch (IllegalAccessException | InvocationTargetException e) {
            return false;
        }
    }

    @Override
    public void left(int kindreds) {
        left = kindreds;
    }

    @Override
    public void at(long done, long all) {
        int percent = (int) (100 * done / all);
        if (percent != last || left != told) {
            last = percent;
            told = left;
            int full = WIDTH * percent / 100;
            err.print(String.format(
                    Locale.ROOT,
                    "\r%s [%s%s] %3d %%%s",
                    task,
                    "=".repeat(full),
                    " ".repeat(WIDTH - full),
                    percent,
                    left > 0 ? String.format(Locale.ROOT, ", %,d groups of relatives left ", left) : ""));
            if (percent == 100) {
                err.println();
            }
            err.flush();
        }
    }
}
