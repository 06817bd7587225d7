package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Notice;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/**
 * Records as far as every one of several models speaks of them.
 *
 * <p>Models are compared by what they foretell of the same things. A model that made no claim about a trait would lose nothing by it, and
 * the one that foretells least would always win; so a trait that some model leaves open, for any animal, is left out for all, and so is a
 * test of a locus that some model does not have.
 *
 * <p>Immutable and thread-safe.
 *
 * @param pedigree the records that are left
 * @param traits ids of the recorded traits that every model speaks of, in the order of the catalogue
 * @param dropped what was left out, and whose silence is the reason
 */
public record SharedRecords(Pedigree pedigree, Set<String> traits, List<Dropped> dropped) {

    /** What can be left out. */
    public enum Kind {
        /** What was seen of a trait. */
        TRAIT("trait"),
        /** Looks at a trait that say nothing under some model, since they do not tell when they were made as that model needs. */
        LOOKS("some looks at"),
        /** What tests of a locus reported. */
        LOCUS("tests of locus");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /**
         * Returns the kind in words.
         *
         * @return for example {@code trait}
         */
        public String words() {
            return words;
        }
    }

    /**
     * Something that was recorded and is left out.
     *
     * @param kind what it is
     * @param id id of the trait or locus
     * @param silent names of the models that make no claim about it, or not about every animal, or to which it is no evidence
     */
    public record Dropped(Kind kind, String id, List<String> silent) {

        /**
         * Copies the names.
         *
         * @param kind what it is
         * @param id id of the trait or locus
         * @param silent names of models
         */
        public Dropped {
            silent = ImmutableList.copyOf(silent);
        }

        /** Returns what is left out and why. */
        @Override
        public String toString() {
            return kind.words() + " " + id + ": no claim by " + String.join(", ", silent);
        }
    }

    /**
     * Copies the lists.
     *
     * @param pedigree the records that are left
     * @param traits ids of traits
     * @param dropped what was left out
     */
    public SharedRecords {
        traits = ImmutableSet.copyOf(traits);
        dropped = ImmutableList.copyOf(dropped);
    }

    /**
     * Keeps what every model speaks of.
     *
     * @param candidates the models, of one catalogue
     * @param pedigree the records
     * @param only ids of the traits that matter; all that are recorded if there are none
     * @return the records that are left
     * @throws ProblemsException if two models have one name, they are of several catalogues, or nothing that was recorded is left, or a litter
     *     is recorded because of a trait that is left out
     */
    public static SharedRecords of(List<Candidate> candidates, Pedigree pedigree, Collection<String> only) {
        comparable(candidates);
        Model first = candidates.get(0).model();
        List<Problem> unknown = only.stream()
                .filter(trait -> first.catalogue().trait(trait).isEmpty())
                .map(trait -> Problems.unknown(
                        Stage.REFERENCES,
                        "unknown-trait",
                        "",
                        "trait",
                        trait,
                        first.catalogue().traits().keySet()))
                .toList();
        if (!unknown.isEmpty()) {
            throw new ProblemsException(unknown);
        }
        Set<String> recorded = new LinkedHashSet<>();
        Map<String, List<GenotypeTest>> tested = new LinkedHashMap<>();
        for (Individual one : pedigree.individuals().values()) {
            one.observations().forEach(seen -> recorded.addAll(seen.traits()));
            one.tests()
                    .forEach(test -> tested.computeIfAbsent(test.locus(), locus -> new ArrayList<>())
                            .add(test));
        }
        List<Dropped> dropped = new ArrayList<>();
        Set<String> traits = new LinkedHashSet<>();
        Map<String, List<String>> silent = unclaimed(candidates);
        for (String trait : first.catalogue().traits().keySet()) {
            if (recorded.contains(trait) && (only.isEmpty() || only.contains(trait))) {
                List<String> open = silent.getOrDefault(trait, List.of());
                if (open.isEmpty()) {
                    traits.add(trait);
                } else {
                    dropped.add(new Dropped(Kind.TRAIT, trait, open));
                }
            }
        }
        Set<String> loci = new LinkedHashSet<>();
        tested.forEach((locus, tests) -> {
            List<String> strangers = candidates.stream()
                    .filter(candidate -> !knows(candidate.model(), tests))
                    .map(Candidate::name)
                    .toList();
            if (strangers.isEmpty()) {
                loci.add(locus);
            } else {
                dropped.add(new Dropped(Kind.LOCUS, locus, strangers));
            }
        });
        if (traits.isEmpty() && loci.isEmpty()) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "nothing-shared",
                            "",
                            "nothing that was recorded is spoken of by every model"
                                    + (dropped.isEmpty() ? "" : ": " + dropped))
                    .expecting("a trait for which every one of these models has a rule without gaps"));
        }
        signs(candidates, pedigree, silent);
        Pedigree shared = restricted(pedigree, traits, loci, Map.of());
        Map<Observation, Set<String>> empty = empty(candidates, shared, dropped);
        return new SharedRecords(empty.isEmpty() ? shared : restricted(shared, traits, loci, empty), traits, dropped);
    }

    /**
     * Checks models, and records of which nothing was seen or tested yet, as {@link #of} checks records of which something was.
     *
     * @param candidates the models
     * @param pedigree the animals
     * @throws ProblemsException if two models have one name, they are of several catalogues, or a litter is recorded because of a trait of
     *     which not all of them speak
     */
    public static void check(List<Candidate> candidates, Pedigree pedigree) {
        comparable(candidates);
        signs(candidates, pedigree, unclaimed(candidates));
    }

    /** Refuses models of one name, and of several catalogues. */
    private static void comparable(List<Candidate> candidates) {
        Set<String> names = new LinkedHashSet<>();
        for (Candidate candidate : candidates) {
            if (!names.add(candidate.name())) {
                throw new ProblemsException(Problem.of(
                                Stage.MEANING,
                                "duplicate-name",
                                "",
                                "two models are called \"" + candidate.name() + "\"")
                        .expecting("each under a name of its own"));
            }
        }
        Model first = candidates.get(0).model();
        for (Candidate other : candidates) {
            if (!other.model().catalogue().reference().equals(first.catalogue().reference())) {
                throw new ProblemsException(Problem.of(
                                Stage.REFERENCES,
                                "other-catalogue",
                                "",
                                other.name() + " is of catalogue "
                                        + other.model().catalogue().reference() + ", "
                                        + candidates.get(0).name()
                                        + " of " + first.catalogue().reference())
                        .expecting("models of one catalogue of traits"));
            }
        }
    }

    /**
     * Finds the traits of which not all models speak.
     *
     * @param candidates the models
     * @return by trait, the names of the models that have no rule for it, or make no claim about it for some animals
     */
    public static Map<String, List<String>> unclaimed(List<Candidate> candidates) {
        Map<String, List<String>> silent = new HashMap<>();
        for (Candidate candidate : candidates) {
            Completeness report = Completeness.of(candidate.model());
            Set<String> open = new LinkedHashSet<>();
            report.withoutRule().forEach(one -> open.add(one.trait()));
            report.gaps().stream()
                    .filter(gap -> gap.about() != Completeness.Gap.About.OWN_STATE)
                    .forEach(gap -> open.add(gap.trait()));
            open.forEach(trait ->
                    silent.computeIfAbsent(trait, key -> new ArrayList<>()).add(candidate.name()));
        }
        return silent;
    }

    private static boolean knows(Model model, List<GenotypeTest> tests) {
        return tests.stream().allMatch(test -> {
            if (!model.loci().containsKey(test.locus())) {
                return false;
            }
            try {
                return !test.pairs(model).isEmpty();
            } catch (ProblemsException notOfThisModel) {
                return false;
            }
        });
    }

    /** What brings litters to notice is a matter of the models, too: each has to speak of it, at the stage and in the light that is stated. */
    private static void signs(List<Candidate> candidates, Pedigree pedigree, Map<String, List<String>> silent) {
        Problems problems = new Problems(Stage.MEANING);
        Map<Sighting, String> empty = emptySigns(candidates, pedigree);
        for (Litter litter : pedigree.litters().values()) {
            litter.ascertainment().noticedBy().ifPresent(sign -> {
                String noticed = "litter " + litter.id() + " is recorded because of \"" + sign + "\", but ";
                String at = "/litters/" + litter.id() + "/ascertainment";
                sign.look().traits().stream()
                        .filter(silent::containsKey)
                        .forEach(trait -> problems.add(
                                "ascertainment-not-shared",
                                at,
                                noticed + "of " + trait + " no claim is made by "
                                        + String.join(", ", silent.getOrDefault(trait, List.of())),
                                "a sign that every model speaks of"));
                if (empty.containsKey(sign)) {
                    problems.add(
                            "ascertainment-not-evidence",
                            at,
                            noticed + empty.get(sign),
                            "the age, moult, season or light at which the sign was seen");
                }
            });
        }
        problems.throwIfAny();
    }

    /** Signs that are no evidence under some model, and why. */
    private static Map<Sighting, String> emptySigns(List<Candidate> candidates, Pedigree pedigree) {
        Map<String, Sighting> signs = new LinkedHashMap<>();
        PedigreeBuilder probes = Pedigree.builder("signs", "1");
        for (Litter litter : pedigree.litters().values()) {
            litter.ascertainment()
                    .noticedBy()
                    .filter(sign -> !signs.containsValue(sign))
                    .filter(sign -> known(candidates.get(0).model(), sign))
                    .ifPresent(sign -> {
                        String id = "sign " + signs.size();
                        signs.put(id, sign);
                        probes.add(Individual.of(id)
                                .with(new Observation(
                                        Optional.empty(),
                                        sign.stage(),
                                        Set.of(sign.look()),
                                        sign.light(),
                                        Optional.empty(),
                                        Optional.empty())));
                    });
        }
        Pedigree asked = probes.build();
        Map<Sighting, String> empty = new HashMap<>();
        for (Candidate candidate : candidates) {
            Inference.of(candidate.compiled(), asked).notices().stream()
                    .filter(notice -> !notice.kind().isEvidence())
                    .forEach(notice -> empty.putIfAbsent(
                            Objects.requireNonNull(signs.get(notice.individual())),
                            "that is no evidence under " + candidate.name() + ": " + notice.message()));
        }
        return empty;
    }

    private static boolean known(Model model, Sighting sign) {
        return model.catalogue().traits().keySet().containsAll(sign.look().traits());
    }

    /** The sexes of those who are parents: known from the start, though they may show only in a later litter. */
    private static Map<String, Sex> parents(Pedigree pedigree) {
        Map<String, Sex> sexes = new HashMap<>();
        for (Litter litter : pedigree.litters().values()) {
            litter.dam().ifPresent(dam -> sexes.put(dam, Sex.FEMALE));
            litter.sires().males().forEach(male -> sexes.put(male, Sex.MALE));
        }
        return sexes;
    }

    /** By look, the traits of which it is no evidence under some model. */
    private static Map<Observation, Set<String>> empty(
            List<Candidate> candidates, Pedigree pedigree, List<Dropped> dropped) {
        Map<String, Observation> looks = new LinkedHashMap<>();
        Set<Observation> met = new HashSet<>();
        PedigreeBuilder probes = Pedigree.builder("looks", "1");
        for (Individual one : pedigree.individuals().values()) {
            for (Observation look : one.observations()) {
                if (met.add(look)) {
                    String id = "look " + looks.size();
                    looks.put(id, look);
                    probes.add(Individual.of(id).with(look));
                }
            }
        }
        Pedigree asked = probes.build();
        Map<Observation, Set<String>> empty = new HashMap<>();
        Map<String, Set<String>> silent = new LinkedHashMap<>();
        for (Candidate candidate : candidates) {
            for (Notice notice : Inference.of(candidate.compiled(), asked).notices()) {
                if (!notice.kind().isEvidence()) {
                    empty.computeIfAbsent(looks.get(notice.individual()), look -> new HashSet<>())
                            .add(notice.trait());
                    silent.computeIfAbsent(notice.trait(), trait -> new LinkedHashSet<>())
                            .add(candidate.name());
                }
            }
        }
        silent.forEach((trait, names) -> dropped.add(new Dropped(Kind.LOOKS, trait, List.copyOf(names))));
        return empty;
    }

    private static Pedigree restricted(
            Pedigree pedigree, Set<String> traits, Set<String> loci, Map<Observation, Set<String>> empty) {
        PedigreeBuilder builder = Pedigree.builder(pedigree.id(), pedigree.version());
        pedigree.title().ifPresent(builder::title);
        pedigree.catalogue().ifPresent(builder::catalogue);
        Map<Observation, Optional<Observation>> met = new HashMap<>();
        Map<String, Sex> parents = parents(pedigree);
        for (Individual one : pedigree.individuals().values()) {
            List<Observation> seen = new ArrayList<>();
            one.observations()
                    .forEach(look -> met.computeIfAbsent(
                                    look, key -> restricted(key, traits, empty.getOrDefault(key, Set.of())))
                            .ifPresent(seen::add));
            builder.add(new Individual(
                    one.id(),
                    one.sex().or(() -> Optional.ofNullable(parents.get(one.id()))),
                    one.born(),
                    one.population(),
                    seen,
                    List.of(),
                    one.tests().stream()
                            .filter(test -> loci.contains(test.locus()))
                            .toList(),
                    List.of(),
                    one.fertility()));
        }
        for (Litter litter : pedigree.litters().values()) {
            builder.add(litter);
        }
        return builder.build();
    }

    private static Optional<Observation> restricted(Observation seen, Set<String> traits, Set<String> empty) {
        List<String> kept = seen.traits().stream()
                .filter(trait -> traits.contains(trait) && !empty.contains(trait))
                .toList();
        if (kept.isEmpty()) {
            return Optional.empty();
        }
        Set<Phenotype> looks = new LinkedHashSet<>();
        seen.looks().forEach(look -> looks.add(look.restrictedTo(kept)));
        return Optional.of(new Observation(
                Optional.empty(), seen.stage(), looks, seen.light(), Optional.empty(), Optional.empty()));
    }
}
