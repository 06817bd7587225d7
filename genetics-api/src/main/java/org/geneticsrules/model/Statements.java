package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.linkage.LinkageGroup;
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
        model.groups().values().forEach(statements::group);
        model.viability().values().forEach(statements::viability);
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
        } else {
            for (Sex sex : Sex.values()) {
                dominance(locus, locus.dominance(sex), pointer + "/" + sex.word(), "in " + sex.word() + "s ");
            }
        }
        locus.absent()
                .ifPresent(shown -> add(
                        Pointer.of("loci", locus.id(), "absent"),
                        "animals without locus " + locus.id() + " show " + shown,
                        Optional.empty(),
                        locus.dominance(lacking(locus)).evidence()));
        locus.mutation()
                .forEach((from, rates) -> rates.forEach((to, rate) -> add(
                        Pointer.of("loci", locus.id(), "mutation", from, to),
                        "at locus " + locus.id() + ", " + from + " mutates to " + to + " in " + rate + " of gametes",
                        locus.mutationEvidence(from, to),
                        Optional.empty())));
    }

    /** The sex that has no strand of the locus; either one if both have. */
    private static Sex lacking(Locus locus) {
        return locus.transmission().strands(Sex.FEMALE) == 0 ? Sex.FEMALE : Sex.MALE;
    }

    private void group(LinkageGroup group) {
        add(group.pointer(), group.words(), group.evidence(), Optional.empty());
    }

    private void viability(Viability stated) {
        add(stated.pointer(), stated.words(), stated.evidence(), Optional.empty());
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
            add(rule.pointer(one), words(rule, one, rest), one.evidence(), rule.evidence());
        }
    }

    /** A state comes before its condition; what takes more words follows it. */
    private static String words(TraitRule rule, Case one, boolean rest) {
        String where = rest ? "otherwise" : "where " + one.when();
        return one.gives() instanceof CaseState.Certain
                ? rule.trait() + " is " + one.gives() + " " + where
                : where + (rest ? " " : ", ") + rule.trait() + " is " + one.gives();
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
