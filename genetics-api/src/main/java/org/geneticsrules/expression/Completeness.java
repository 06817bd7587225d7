package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Draft;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Statement;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * What a model leaves open, contradicts, never reaches, cannot tell apart or states without evidence.
 *
 * <pre>{@code
 * Completeness report = Completeness.of(model);
 * report.gaps();        // where it makes no claim
 * report.unreached();   // what no animal has
 * }</pre>
 *
 * <p>None of this makes a sound model unsound. A gap may be an honest limit of what is known, and an expression that no genotype reaches
 * may be there for another dominance hypothesis; but each is worth a look by whoever writes a model or relies on it.
 *
 * <p>Everything is true of every sex, genotype, age, moult, season and outcome of chance. It is read from decision diagrams of the
 * rules; genotypes are never listed (see the package description). All parts are in the order of the model's document.
 *
 * <p>Immutable and thread-safe.
 *
 * @param model the model reported on
 * @param conflicts statements that contradict each other, each with an example; none in a sound model
 * @param withoutRule traits of the catalogue for which the model has no rule
 * @param gaps where the model makes no claim about a trait for which it has a rule
 * @param unreached what no animal has, whatever its genotype
 * @param alikeAlleles alleles either of which may stand for the other in any genotype without any difference
 * @param alikeGenotypes genotypes of one locus that no look and no chance to live tells apart, such as a carrier and what it looks like
 * @param idle loci that make no difference, and inner traits that nothing reads
 * @param limited states that are seen in one sex, in some seasons or at some ages only
 * @param withoutEvidence statements for which no evidence is stated
 * @param graded statements with evidence, by its grade, strongest first; grades without statements are absent
 */
public record Completeness(
        Reference model,
        List<Problem> conflicts,
        List<WithoutRule> withoutRule,
        List<Gap> gaps,
        List<Unreached> unreached,
        List<Alike> alikeAlleles,
        List<Alike> alikeGenotypes,
        List<Idle> idle,
        List<Limited> limited,
        List<Statement> withoutEvidence,
        Map<Grade, List<Statement>> graded) {

    /**
     * Copies the lists.
     *
     * @param model the model reported on
     * @param conflicts contradictions
     * @param withoutRule traits without rule
     * @param gaps where no claim is made
     * @param unreached what no animal has
     * @param alikeAlleles alleles that are not told apart
     * @param alikeGenotypes genotypes that are not told apart
     * @param idle what makes no difference
     * @param limited states bound to a sex, season or age
     * @param withoutEvidence statements without evidence
     * @param graded statements with evidence by grade
     */
    public Completeness {
        conflicts = ImmutableList.copyOf(conflicts);
        withoutRule = ImmutableList.copyOf(withoutRule);
        gaps = ImmutableList.copyOf(gaps);
        unreached = ImmutableList.copyOf(unreached);
        alikeAlleles = ImmutableList.copyOf(alikeAlleles);
        alikeGenotypes = ImmutableList.copyOf(alikeGenotypes);
        idle = ImmutableList.copyOf(idle);
        limited = ImmutableList.copyOf(limited);
        withoutEvidence = ImmutableList.copyOf(withoutEvidence);
        ImmutableMap.Builder<Grade, List<Statement>> copy = ImmutableMap.builder();
        graded.forEach((grade, statements) -> copy.put(grade, ImmutableList.copyOf(statements)));
        graded = copy.buildOrThrow();
    }

    /**
     * A trait of the catalogue for which a model has no rule.
     *
     * @param trait its id
     * @param reason why, if the model says so
     */
    public record WithoutRule(String trait, Optional<String> reason) {}

    /**
     * Where a model makes no claim about a trait.
     *
     * @param trait id of the trait
     * @param about what nothing is said about
     * @param where disjoint boxes over the sex, the season, the expressions that genotypes have, and draws by the pointer of their case
     * @param all whether these are all of the boxes; else there are more than anybody would read
     */
    public record Gap(String trait, About about, List<Condition> where, boolean all) {

        /** What a model makes no claim about. */
        public enum About {
            /** Neither about the trait's own state nor about what is seen. */
            EITHER("own state and what is seen"),
            /** About the trait's own state; masks show one state or another all the same. */
            OWN_STATE("own state"),
            /** About what is seen, though the own state is known: it is open whether a mask covers it. */
            SEEN("what is seen");

            private final String words;

            About(String words) {
                this.words = words;
            }

            /**
             * Returns the words for it in documents.
             *
             * @return for example {@code own state}
             */
            public String words() {
                return words;
            }
        }

        /**
         * Copies the boxes.
         *
         * @param trait id of the trait
         * @param about what nothing is said about
         * @param where disjoint boxes
         * @param all whether these are all
         */
        public Gap {
            where = ImmutableList.copyOf(where);
        }

        /**
         * Tells whether nothing is said about what is seen.
         *
         * @return true if animals of these boxes are answered with "not modelled"
         */
        public boolean shown() {
            return about != About.OWN_STATE;
        }

        /**
         * Tells whether nothing is said about the trait's own state.
         *
         * @return true if it is not known what a mask would cover there
         */
        public boolean own() {
            return about != About.SEEN;
        }
    }

    /** What kind of thing is not reached. */
    public enum Part {
        /** An expression that no genotype of its locus shows. */
        EXPRESSION,
        /** A statement of dominance that decides about no genotype. */
        DOMINANCE,
        /** A statement about viability that concerns no genotype. */
        VIABILITY,
        /** A case whose condition never holds. */
        CASE,
        /** An {@code otherwise} for which the cases leave nothing. */
        OTHERWISE,
        /** A state for which a progression states steps, but in which it never is. */
        PROGRESSION_STATE,
        /** A class of a threshold that no sum of doses and residual reaches where its case holds. */
        THRESHOLD_STATE,
        /** A state that is never seen or, of an inner trait, never there. */
        STATE,
        /** A state that only animals have that are never born; if born, they would show it. */
        UNBORN_STATE,
        /** A mask that is never active. */
        MASK;

        /**
         * Returns the words for it.
         *
         * @return the name in small letters, for example {@code threshold state}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * Something that no animal reaches.
     *
     * @param part what kind of thing it is
     * @param pointer its address in the model's document; of a state, that of its trait
     * @param name its name or, of a statement of dominance, what it states
     * @param underOtherDominance true if it could be reached if only the dominance of loci were another; false if the rules themselves
     *     rule it out
     */
    public record Unreached(Part part, String pointer, String name, boolean underOtherDominance) {}

    /**
     * Alleles or genotypes of a locus that are not told apart: with all else about an animal the same, chance included, nothing differs
     * in what is seen of it at any stage, nor in its chance to be born and scored.
     *
     * @param locus id of the locus
     * @param sex the sex of which this is true, where the sexes differ
     * @param groups groups of two or more allele ids or genotype texts; those of different groups, or in none, are told apart
     */
    public record Alike(String locus, Optional<Sex> sex, List<List<String>> groups) {

        /**
         * Copies the groups.
         *
         * @param locus id of the locus
         * @param sex the sex
         * @param groups the groups
         */
        public Alike {
            groups = groups.stream().map(ImmutableList::copyOf).collect(ImmutableList.toImmutableList());
        }
    }

    /**
     * Something without which nothing would be seen differently.
     *
     * @param pointer address of a locus or an inner trait
     * @param name its id
     * @param read whether some rule names it nevertheless
     */
    public record Idle(String pointer, String name, boolean read) {}

    /**
     * A state that is not seen of all animals at all times.
     *
     * @param trait id of the trait
     * @param state the state
     * @param sex the only sex that shows it, if only one does
     * @param seasons the seasons in which it is seen; empty if in all, or if the season makes no difference
     * @param from the counts before which it is never seen, as far as there are such
     * @param until the counts after which it is never seen, as far as there are such
     */
    public record Limited(
            String trait, String state, Optional<Sex> sex, List<String> seasons, LifeStage from, LifeStage until) {

        /**
         * Copies the seasons.
         *
         * @param trait id of the trait
         * @param state the state
         * @param sex the only sex
         * @param seasons the seasons
         * @param from the first counts
         * @param until the last counts
         */
        public Limited {
            seasons = ImmutableList.copyOf(seasons);
        }

        boolean isBound() {
            return sex.isPresent()
                    || !seasons.isEmpty()
                    || !from.equals(LifeStage.unstated())
                    || !until.equals(LifeStage.unstated());
        }
    }

    /**
     * Reports on a model.
     *
     * @param model a model
     * @return the report, without conflicts
     * @throws TooLargeException if the diagrams of its rules would be too large, with the statements that drive them
     */
    public static Completeness of(Model model) {
        return of(model, ImmutableList.of());
    }

    /**
     * Reports on a draft, conflicts included. Where cases conflict, the one stated first counts for the rest of the report, and
     * where masks do, either.
     *
     * @param draft a draft
     * @return the report
     * @throws TooLargeException if the diagrams of its rules would be too large, with the statements that drive them
     */
    public static Completeness of(Draft draft) {
        return of(draft.asStated(), draft.conflicts());
    }

    private static Completeness of(Model model, List<Problem> conflicts) {
        Survey survey = new Survey(model);
        Likeness likeness = new Likeness(survey);
        return new Completeness(
                model.reference(),
                conflicts,
                withoutRule(model),
                new Gaps(survey).find(),
                new Reaching(survey).find(),
                likeness.alleles(),
                likeness.genotypes(),
                likeness.idle(),
                new Bounds(survey).find(),
                model.statements().values().stream()
                        .filter(statement -> statement.evidence().isEmpty())
                        .toList(),
                graded(model));
    }

    private static List<WithoutRule> withoutRule(Model model) {
        return model.catalogue().traits().keySet().stream()
                .filter(trait -> !model.rules().containsKey(trait))
                .map(trait -> new WithoutRule(
                        trait, Optional.ofNullable(model.notModelled().get(trait))))
                .toList();
    }

    private static Map<Grade, List<Statement>> graded(Model model) {
        Map<Grade, List<Statement>> graded = new EnumMap<>(Grade.class);
        for (Statement statement : model.statements().values()) {
            if (statement.evidence().isPresent()) {
                graded.computeIfAbsent(statement.grade(), grade -> new ArrayList<>())
                        .add(statement);
            }
        }
        return graded;
    }
}
