package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.recorded.NextLitter.Course;
import org.geneticsrules.answer.recorded.PlannedMating.Run;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;

/** Puts together what a litter of two recorded animals may show. */
final class NextLitterAnswer {

    private static final int MOST_LOOKS = 300;
    private static final int MOST_LISTED = 6;

    /** What subtraction leaves of nothing. */
    private static final double ROUNDING = 1e-12;

    private final Ground ground;
    private final NextLitterQuestion question;
    private final PlannedMating mating;
    private final View view;
    private final Set<String> loci;
    private final Draft draft;
    private boolean gaps;

    NextLitterAnswer(Ground ground, NextLitterQuestion question) {
        this.ground = ground;
        this.question = question;
        this.mating = PlannedMating.of(ground, question.one(), question.other());
        this.draft = new Draft(ground);
        Set<String> named = new LinkedHashSet<>(question.traits());
        question.look().ifPresent(look -> named.addAll(look.traits()));
        requireRuled(ground, named);
        question.look().ifPresent(ground.model().catalogue()::check);
        this.view = new View(List.copyOf(question.traits()), question.stage(), Census.CONCEIVED);
        View all = new View(List.copyOf(named), question.stage(), Census.CONCEIVED);
        this.loci = ImmutableSet.copyOf(ground.compiled().lociRead(all));
    }

    /** Refuses traits that the model has no rule for. */
    static void requireRuled(Ground ground, Set<String> named) {
        Problems problems = new Problems(Stage.REFERENCES);
        for (String trait : named) {
            String reason = ground.model().notModelled().get(trait);
            if (reason != null) {
                problems.add(
                        "not-modelled",
                        "",
                        "model " + ground.model() + " makes no claim about \"" + trait + "\": " + reason);
            } else if (!ground.model().visibleTraits().contains(trait)) {
                problems.unknown(
                        "unknown-trait", "", "trait", trait, ground.model().visibleTraits());
            }
        }
        problems.throwIfAny();
    }

    RecordedAnswer answer() {
        List<Phenotype> looks = looks();
        if (looks.size() > MOST_LOOKS) {
            throw new TooLargeException("looks of a kit", looks.size(), MOST_LOOKS, "ask about fewer traits at a time");
        }
        List<Weighed<Conclusions>> weighed =
                ground.weigh(mating.kindred(), inference -> inference.conclude(loci), draft.notices);
        List<Course> courses =
                weighed.stream().map(one -> course(one.origin(), looks)).toList();
        NextLitter found = new NextLitter(
                mating.sire(), mating.dam(), question.look(), question.kits(), mating.inbreeding(), courses);
        mating.tell(draft, List.copyOf(question.traits()));
        draft.rest(mating.kindred(), loci, weighed.stream().map(Weighed::origin).toList());
        draft.statements.addAll(Kits.statements(ground.compiled(), view.traits(), question.stage()));
        draft.notices(mating.kindred(), ground.inference(mating.kindred()).notices());
        if (courses.isEmpty()) {
            draft.undecided();
        }
        boolean contradicted = courses.stream()
                .flatMap(one -> one.looks().values().stream())
                .anyMatch(chance -> chance.standing() == Standing.CONTRADICTED);
        if (contradicted) {
            draft.conflicts(mating.kindred(), ground.inference(mating.kindred()).contradictions());
        }
        String many = ground.answers().young().many();
        return draft.answer(
                "next litter",
                "What may the next " + many + " of " + RecordWords.quoted(mating.sire()) + " and "
                        + RecordWords.quoted(mating.dam()) + " show in " + String.join(", ", question.traits()) + "?",
                verdict(found, contradicted),
                found);
    }

    /** The looks of kits. A record of a trait for which the model makes no claim says nothing, so gaps are told for one trait alone. */
    private List<Phenotype> looks() {
        List<Phenotype> looks = ground.compiled().diagram(view).outcomes();
        gaps = looks.stream()
                .anyMatch(look -> look.traits().size() < view.traits().size());
        boolean counted = question.look()
                .filter(look -> ground
                        .compiled()
                        .diagram(new View(List.copyOf(look.traits()), question.stage(), Census.CONCEIVED))
                        .outcomes()
                        .stream()
                        .anyMatch(one -> one.traits().size() < look.traits().size()))
                .isPresent();
        if (counted || (gaps && view.traits().size() > 1)) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "not-modelled",
                            "",
                            "the model makes no claim about one of these traits for some genotypes")
                    .expecting("traits one at a time, and no look to count in such a trait"));
        }
        return gaps ? states(view.traits().get(0)) : looks;
    }

    private List<Phenotype> states(String trait) {
        return ground.model().states(trait).stream()
                .map(state -> Phenotype.of(trait, state))
                .toList();
    }

    /** Kits for which no claim is made count with every state of k, so that all chances together are 1 + (k - 1) q. */
    private Map<Phenotype, Chance> withoutGaps(Map<Phenotype, Chance> all) {
        int states = ground.model().states(view.traits().get(0)).size();
        if (states < 2 || all.values().stream().anyMatch(chance -> !chance.isSettled())) {
            return all;
        }
        double sum = all.values().stream()
                .mapToDouble(chance -> chance.value().orElseThrow())
                .sum();
        double open = Math.max(0, (sum - 1) / (states - 1));
        Map<Phenotype, Chance> left = new LinkedHashMap<>();
        all.forEach((look, chance) -> {
            double own = chance.value().orElseThrow() - open;
            if (own > ROUNDING) {
                left.put(look, Chance.exact(own));
            }
        });
        if (open > ROUNDING) {
            left.put(Phenotype.unspecified(), Chance.exact(open));
        }
        return left;
    }

    private Course course(Origin origin, List<Phenotype> looks) {
        Run unseen = mating.suppose(origin, List.of(Optional.empty()), loci);
        Map<Phenotype, Chance> chances = new LinkedHashMap<>();
        for (Phenotype look : looks) {
            Chance chance = unseen.standing() == Standing.EXACT
                    ? PlannedMating.ratio(unseen, mating.suppose(origin, List.of(seen(Set.of(look))), loci))
                    : Chance.unsettled(unseen.standing());
            draft.settled(chance.standing());
            if (!chance.isSettled() || chance.value().orElseThrow() > 0) {
                chances.put(look, chance);
            }
        }
        Map<Phenotype, Chance> told = gaps ? withoutGaps(chances) : chances;
        return question.look()
                .map(look -> counted(origin, told, look))
                .orElseGet(() -> new Course(origin, told, List.of(), Optional.empty()));
    }

    /** Some kits show the look and the others do not; which ones is a matter of how often it can be chosen. */
    private Course counted(Origin origin, Map<Phenotype, Chance> chances, Phenotype look) {
        int n = question.kits();
        Optional<Observation> shown = seen(Set.of(look));
        Set<Phenotype> others = PlannedMating.others(ground, List.copyOf(look.traits()), Set.of(look));
        Run unseen = mating.suppose(origin, Collections.nCopies(n, Optional.empty()), loci);
        List<Chance> counts = new ArrayList<>();
        double choose = 1;
        for (int k = 0; k <= n; k++) {
            List<Optional<Observation>> kits = new ArrayList<>(Collections.nCopies(k, shown));
            kits.addAll(Collections.nCopies(n - k, others.isEmpty() ? Optional.empty() : seen(others)));
            if (unseen.standing() != Standing.EXACT) {
                counts.add(Chance.unsettled(unseen.standing()));
            } else {
                Chance one = PlannedMating.ratio(unseen, mating.suppose(origin, kits, loci));
                double times = others.isEmpty() && k < n ? 0 : choose;
                counts.add(one.isSettled() ? Chance.exact(times * one.value().orElseThrow()) : one);
            }
            draft.settled(counts.get(k).standing());
            choose = choose * (n - k) / (k + 1);
        }
        Run first = mating.suppose(origin, List.of(Optional.empty()), loci);
        Chance once = first.standing() == Standing.EXACT
                ? PlannedMating.ratio(first, mating.suppose(origin, List.of(shown), loci))
                : Chance.unsettled(first.standing());
        Chance independent =
                once.isSettled() ? Chance.exact(Math.pow(1 - once.value().orElseThrow(), n)) : once;
        return new Course(origin, chances, counts, Optional.of(independent));
    }

    private Optional<Observation> seen(Set<Phenotype> looks) {
        return Optional.of(new Observation(Optional.empty(), question.stage(), looks));
    }

    private String verdict(NextLitter found, boolean contradicted) {
        String pair = RecordWords.quoted(found.sire()) + " and " + RecordWords.quoted(found.dam());
        if (contradicted) {
            return "The records of " + pair
                    + " and their relatives cannot all be true under this model, so that no chance follows from all of them"
                    + " together. Re-examine the records named, or the model.";
        }
        if (found.courses().isEmpty()) {
            return "How likely the looks of the " + ground.answers().young().many() + " of " + pair
                    + " are cannot be said without frequencies.";
        }
        Set<Phenotype> all = new LinkedHashSet<>();
        found.courses().forEach(one -> all.addAll(one.looks().keySet()));
        List<String> listed = new ArrayList<>();
        for (Phenotype look : all) {
            if (listed.size() < MOST_LISTED) {
                List<Chance> chances = found.courses().stream()
                        .map(one -> one.looks().getOrDefault(look, Chance.exact(0)))
                        .toList();
                listed.add((look.traits().isEmpty() ? "nothing that is modelled" : look.toString())
                        + MayCarryAnswer.range(chances).replaceFirst("^:", ""));
            }
        }
        String more = all.size() > MOST_LISTED ? "; and " + (all.size() - MOST_LISTED) + " further looks" : "";
        return "The next " + ground.answers().young().one() + " of " + pair + " shows " + String.join("; ", listed)
                + more + "." + count(found);
    }

    private String count(NextLitter found) {
        if (found.look().isEmpty()) {
            return "";
        }
        List<Chance> some = found.courses().stream()
                .map(one -> one.counts().get(0))
                .map(none -> none.isSettled() ? Chance.exact(1 - none.value().orElseThrow()) : none)
                .toList();
        return " Of " + found.kits() + " " + ground.answers().young().of(found.kits()) + " at least one shows "
                + found.look().get() + " with a chance of"
                + MayCarryAnswer.range(some).replaceFirst("^:", "") + ".";
    }
}
