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
    private int longest;

    /** How many sets of relatives are left; less than 0 until that is known. */
    private int left = -1;

    private int told = -1;

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
            String line = String.format(
                    Locale.ROOT,
                    "%s [%s%s] %3d %%%s",
                    task,
                    "=".repeat(full),
                    " ".repeat(WIDTH - full),
                    percent,
                    left < 0
                            ? ""
                            : String.format(
                                    Locale.ROOT, ", %,d %s of relatives left", left, left == 1 ? "group" : "groups"));
            longest = Math.max(longest, line.length());
            err.print("\r" + line + " ".repeat(longest - line.length())); // over the whole of the line before
            if (percent == 100) {
                err.println();
            }
            err.flush();
        }
    }
}
