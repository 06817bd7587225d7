package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/** Reads how often people name one state of a trait as another. Stateless and thread-safe. */
final class Misnamings {

    private static final String OPTION = "--misnamed";
    private static final String AS = " as ";
    private static final String EXAMPLE = "\"hue: brown as black=2/100\"";

    private Misnamings() {}

    /** Reads all; what is wrong with any is told at once. */
    static Confusions read(Model model, List<String> given) {
        StringBuilder problems = new StringBuilder();
        List<Confusion> read = new ArrayList<>();
        for (String one : given) {
            try {
                Confusion confusion = Inputs.reading(OPTION, one, () -> read(model, one));
                if (read.stream().anyMatch(before -> isSame(before, confusion))) {
                    throw new InputException("problem: " + OPTION + ": \"" + one + "\" states a second chance for "
                            + "what another " + OPTION + " states\n");
                }
                read.add(confusion);
            } catch (InputException e) {
                problems.append(e.text());
            }
        }
        if (problems.length() > 0) {
            throw new InputException(problems.toString());
        }
        try {
            return Confusions.of(read);
        } catch (IllegalArgumentException e) {
            throw new InputException("problem: " + OPTION + ": " + e.getMessage()
                    + "; what is named rightly and all that it is taken for share 1\n");
        }
    }

    private static boolean isSame(Confusion one, Confusion other) {
        return one.trait().equals(other.trait())
                && one.shown().equals(other.shown())
                && one.read().equals(other.read())
                && one.stage().equals(other.stage());
    }

    /** {@code trait: shown as read=chance}, and perhaps {@code @ stage} before the equals sign. */
    private static Confusion read(Model model, String given) {
        int equals = given.lastIndexOf('=');
        int colon = given.indexOf(':');
        int at = given.lastIndexOf('@', Math.max(0, equals));
        if (colon < 1 || equals < colon) {
            throw syntax("a misnaming has a trait, two of its states and a chance");
        }
        String states = given.substring(colon + 1, at > colon ? at : equals);
        int as = states.indexOf(AS);
        if (as < 0) {
            throw syntax("no \"as\" tells what is shown from what is recorded instead");
        }
        String trait = given.substring(0, colon).strip();
        String shown = states.substring(0, as).strip();
        String read = states.substring(as + AS.length()).strip();
        Set<Problem> unknown = new LinkedHashSet<>();
        for (String state : List.of(shown, read)) {
            try {
                model.catalogue().check(Phenotype.of(trait, state));
            } catch (ProblemsException e) {
                unknown.addAll(e.problems());
            } catch (IllegalArgumentException e) {
                throw syntax(String.valueOf(e.getMessage()));
            }
        }
        if (!unknown.isEmpty()) {
            throw new ProblemsException(List.copyOf(unknown));
        }
        try {
            Optional<LifeStage> stage = at > colon
                    ? Optional.of(model.catalogue().check(LifeStage.parse(given.substring(at + 1, equals))))
                    : Optional.empty();
            Probability chance = Probability.parse(given.substring(equals + 1).strip());
            return new Confusion(trait, shown, read, stage, chance);
        } catch (IllegalArgumentException e) {
            throw syntax(String.valueOf(e.getMessage()));
        }
    }

    private static ProblemsException syntax(String message) {
        return new ProblemsException(
                Problem.of(Stage.SYNTAX, "misnaming-syntax", "", message).expecting("a misnaming such as " + EXAMPLE));
    }
}
