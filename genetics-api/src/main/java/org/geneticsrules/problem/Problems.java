package org.geneticsrules.problem;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Collects the problems of one stage, so that all are reported together.
 *
 * <p>Nobody reads more than the first two hundred, and looking for the nearest name of each would be work that a hostile file could
 * multiply; further problems are only counted.
 *
 * <p>Not thread-safe.
 */
public final class Problems {

    private static final int MOST = 200;

    private final Stage stage;
    private final List<Problem> found = new ArrayList<>();
    private int more;

    /**
     * Starts a collection.
     *
     * @param stage the stage whose problems it collects
     */
    public Problems(Stage stage) {
        this.stage = stage;
    }

    /**
     * Adds a problem.
     *
     * @param code a stable word for programs
     * @param pointer where, as a JSON Pointer
     * @param message what is wrong
     */
    public void add(String code, String pointer, String message) {
        if (room()) {
            found.add(Problem.of(stage, code, pointer, message));
        }
    }

    /**
     * Adds a problem with what was expected.
     *
     * @param code a stable word for programs
     * @param pointer where, as a JSON Pointer
     * @param message what is wrong
     * @param expected what was expected instead
     */
    public void add(String code, String pointer, String message, String expected) {
        if (room()) {
            found.add(Problem.of(stage, code, pointer, message).expecting(expected));
        }
    }

    /**
     * Adds a problem that another check found, of whatever stage.
     *
     * @param problem the problem
     */
    public void add(Problem problem) {
        if (room()) {
            found.add(problem);
        }
    }

    /**
     * Adds the problem that a name refers to nothing, with all known names if they are few and the nearest one.
     *
     * @param code a stable word for programs
     * @param pointer where, as a JSON Pointer
     * @param what what kind of thing was named, as in {@code allele of locus C}
     * @param name the name that is not known
     * @param known the names that are
     */
    public void unknown(String code, String pointer, String what, String name, Collection<String> known) {
        if (room()) {
            found.add(unknown(stage, code, pointer, what, name, known));
        }
    }

    /**
     * Returns the problem that a name refers to nothing.
     *
     * @param stage the stage of checking
     * @param code a stable word for programs
     * @param pointer where, as a JSON Pointer
     * @param what what kind of thing was named
     * @param name the name that is not known
     * @param known the names that are
     * @return the problem, naming up to twelve known names and the nearest
     */
    public static Problem unknown(
            Stage stage, String code, String pointer, String what, String name, Collection<String> known) {
        Problem problem = Problem.of(stage, code, pointer, "unknown " + what + " \"" + name + "\"");
        Optional<String> nearest = Nearest.to(name, known);
        if (!known.isEmpty() && known.size() <= 12) {
            problem = problem.expecting("one of " + String.join(", ", known));
        }
        return problem.near(nearest);
    }

    /**
     * Returns what was found so far.
     *
     * @return the problems in the order found; the last one tells how many more there are, if there are
     */
    public List<Problem> list() {
        List<Problem> all = new ArrayList<>(found);
        if (more > 0) {
            all.add(Problem.of(stage, "more-problems", "", more + " more problems are not listed"));
        }
        return Collections.unmodifiableList(all);
    }

    private boolean room() {
        if (found.size() < MOST) {
            return true;
        }
        more++;
        return false;
    }

    /**
     * Ends the stage.
     *
     * @throws ProblemsException if any problem was found
     */
    public void throwIfAny() {
        if (!found.isEmpty()) {
            throw new ProblemsException(list());
        }
    }
}
