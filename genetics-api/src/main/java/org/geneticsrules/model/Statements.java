package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Sex;

/** Lists the statements of a model with their words and their evidence. */
final class Statements {

    private final Model model;
    private final ImmutableMap.Builder<String, Statement> found = ImmutableMap.builder();

    private Statements(Model model) {
        this.model = model;
    }

    static ImmutableMap<String, Statement> of(Model model) {
        Statements statements = new Statements(model);
        model.loci().values().forEach(statements::locus);
        model.rules().values().forEach(statements::rule);
        model.masks().values().forEach(statements::mask);
        model.populations()
                .values()
                .forEach(population -> statements.add(
                        Pointer.of("populations", population.id()),
                        "population \"" + population.id() + "\": "
                                + population.title().orElse("assumed frequencies"),
                        population.evidence(),
                        Optional.empty()));
        return statements.found.buildOrThrow();
    }

    private void locus(Locus locus) {
        String pointer = Pointer.of("loci", locus.id(), "dominance");
        if (!locus.dependsOnSex()) {
            dominance(locus, locus.dominance(Sex.FEMALE), pointer, "");
            return;
        }
        for (Sex sex : Sex.values()) {
            dominance(locus, locus.dominance(sex), pointer + "/" + sex.word(), "in " + sex.word() + "s ");
        }
    }

    private void dominance(Locus locus, Dominance dominance, String pointer, String where) {
        for (int i = 0; i < dominance.order().size(); i++) {
            Dominance.Order order = dominance.order().get(i);
            add(
                    pointer + "/order/" + i,
                    where + "at locus " + locus.id() + ", " + order.dominant() + " is dominant over "
                            + order.recessive(),
                    order.evidence(),
                    dominance.evidence());
        }
        for (Dominance.Shows shown : dominance.shows()) {
            add(
                    pointer + Pointer.of("shows", shown.key()),
                    where + "at locus " + locus.id() + ", " + shown,
                    shown.evidence(),
                    dominance.evidence());
        }
    }

    private void rule(TraitRule rule) {
        List<Case> cases = new ArrayList<>(rule.cases());
        rule.otherwise().ifPresent(cases::add);
        for (Case one : cases) {
            boolean rest = rule.otherwise().equals(Optional.of(one));
            add(
                    rule.pointer(one),
                    rule.trait() + " is " + one.gives() + (rest ? " otherwise" : " where " + one.when()),
                    one.evidence(),
                    rule.evidence());
        }
    }

    private void mask(Mask mask) {
        String covers = mask.covers().entrySet().stream()
                .map(cover -> cover.getKey() + " shows "
                        + cover.getValue()
                                .constant()
                                .orElse(cover.getValue().changes().toString()))
                .collect(Collectors.joining(", "));
        add(
                Pointer.of("masks", mask.id()),
                "where " + mask.when() + ", mask \"" + mask.id() + "\" covers: " + covers,
                mask.evidence(),
                Optional.empty());
    }

    private void add(String pointer, String text, Optional<String> own, Optional<String> inherited) {
        Optional<Evidence> support = own.or(() -> inherited)
                .flatMap(id -> Optional.ofNullable(model.evidence().get(id)));
        found.put(pointer, new Statement(pointer, text, support));
    }
}
