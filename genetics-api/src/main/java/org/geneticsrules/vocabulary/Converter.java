package org.geneticsrules.vocabulary;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.vocabulary.Conversion.Candidate;

/** Converts names; the steps are those of the package's description. */
final class Converter {

    private static final int MOST_CANDIDATES = 1_000;

    /** Names that are being put together, with what they mean in the circumstances of what was said. */
    private record Draft(List<Name> names, BoxSet meaning) {}

    /** A candidate, and how much it says that was not said, or does not say that was. */
    private record Weighed(Candidate candidate, BigInteger amiss) {}

    private final BoxSet said;
    private final BoxSet circumstances;
    private final Vocabulary target;
    private final Optional<PartialDate> date;
    private final Map<String, BoxSet> uncovered = new LinkedHashMap<>();

    private Converter(BoxSet said, BoxSet circumstances, Vocabulary target, Optional<PartialDate> date) {
        this.said = said;
        this.circumstances = circumstances;
        this.target = target;
        this.date = date;
    }

    static Conversion of(List<Meaning> names, Vocabulary target, List<String> facets, Optional<PartialDate> date) {
        if (names.isEmpty() || facets.isEmpty()) {
            throw new IllegalArgumentException("a conversion needs at least one name and one facet");
        }
        check(names, target, facets);
        BoxSet said = target.traitSpace().boxes.everything();
        BoxSet circumstances = target.traitSpace().boxes.everything();
        for (Meaning name : names) {
            said = said.and(name.set());
            circumstances = circumstances.and(target.traitSpace().agreeing(TraitSpace.known(name.occasion())));
        }
        if (said.isEmpty()) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "names-exclude-each-other",
                            "",
                            "no animal can be called all of "
                                    + names.stream().map(Meaning::word).toList() + " on the occasion")
                    .expecting("names that some animal can have together"));
        }
        Converter converter = new Converter(said, circumstances, target, date);
        List<Candidate> candidates =
                converter.candidates(facets.stream().distinct().toList());
        return new Conversion(names, target, date, said, candidates, converter.uncovered);
    }

    private static void check(List<Meaning> names, Vocabulary target, List<String> facets) {
        Problems problems = new Problems(Stage.REFERENCES);
        for (Meaning name : names) {
            if (!name.vocabulary()
                    .catalogue()
                    .reference()
                    .equals(target.catalogue().reference())) {
                problems.add(
                        "other-catalogue",
                        "",
                        "\"" + name.word() + "\" is a name of " + name.vocabulary() + ", which is about catalogue "
                                + name.vocabulary().catalogue().reference(),
                        "a vocabulary about catalogue " + target.catalogue().reference() + ", as " + target + " is");
            }
        }
        facets.stream()
                .filter(facet -> !target.facets().containsKey(facet))
                .forEach(facet -> problems.unknown(
                        "unknown-facet",
                        "",
                        "facet of " + target,
                        facet,
                        target.facets().keySet()));
        problems.throwIfAny();
    }

    /**
     * Facet by facet, each draft is continued by every name that some animal so called can have; where the facet has none, it stays as it
     * is.
     */
    private List<Candidate> candidates(List<String> facets) {
        List<Draft> drafts = List.of(new Draft(List.of(), circumstances));
        for (String facet : facets) {
            Map<Name, BoxSet> fitting = new LinkedHashMap<>();
            BoxSet rest = said;
            for (Name name : target.names(facet)) {
                BoxSet meaning = target.meaning(name.inUse(date)).and(circumstances);
                if (!meaning.and(said).isEmpty()) {
                    fitting.put(name, meaning);
                    rest = rest.minus(meaning);
                }
            }
            uncovered.put(facet, rest);
            List<Draft> longer = new ArrayList<>();
            drafts.forEach(draft -> continued(draft, fitting, longer));
            drafts = longer;
        }
        return drafts.stream()
                .filter(draft -> !draft.names.isEmpty())
                .map(this::weighed)
                .sorted(Comparator.<Weighed, Match>comparing(one -> one.candidate.match())
                        .thenComparing(Weighed::amiss))
                .map(Weighed::candidate)
                .toList();
    }

    private void continued(Draft draft, Map<Name, BoxSet> fitting, List<Draft> into) {
        int before = into.size();
        fitting.forEach((name, meaning) -> {
            BoxSet both = draft.meaning.and(meaning);
            if (!both.and(said).isEmpty()) {
                List<Name> names = new ArrayList<>(draft.names);
                names.add(name);
                add(into, new Draft(names, both));
            }
        });
        if (into.size() == before) {
            add(into, draft);
        }
    }

    private static void add(List<Draft> into, Draft draft) {
        if (into.size() == MOST_CANDIDATES) {
            throw new TooLargeException(
                    "names of whole coats", into.size() + 1.0, MOST_CANDIDATES, "convert fewer facets at once.");
        }
        into.add(draft);
    }

    private Weighed weighed(Draft draft) {
        Candidate candidate = new Candidate(
                draft.names, Match.of(draft.meaning, said), draft.meaning.minus(said), said.minus(draft.meaning));
        return new Weighed(
                candidate,
                candidate.alsoMeans().size().add(candidate.leavesOut().size()));
    }
}
