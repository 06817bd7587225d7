package org.geneticsrules.pedigree;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/**
 * Individuals, the litters they come from, and the trail of what was corrected.
 *
 * <pre>{@code
 * Pedigree pedigree = Pedigree.builder("example.two-generations", "1")
 *         .add(Individual.of("jill", Sex.FEMALE))
 *         .add(Individual.of("hob", Sex.MALE))
 *         .add(Individual.of("kit"))
 *         .add(Litter.of("spring", "jill", "hob", "kit"))
 *         .build();
 * }</pre>
 *
 * <p>Two pedigrees are equal if they state the same; the order in which individuals and litters were stated is kept for display and does
 * not count.
 *
 * <p>Immutable and thread-safe.
 */
public final class Pedigree {

    private final String id;
    private final String version;
    private final Optional<String> title;
    private final Optional<Reference> catalogue;
    private final ImmutableMap<String, Individual> individuals;
    private final ImmutableMap<String, Litter> litters;
    private final ImmutableList<Correction> corrections;

    /** Litters by their position in {@link #links}. */
    private final ImmutableList<Litter> litterList;

    /** Parents before young. */
    private final ImmutableList<String> order;

    final Links links;

    /** Sorted when first asked for; any thread that does so finds the same. */
    private final Supplier<RecordKinds> recordKinds;

    Pedigree(PedigreeBuilder stated, Links links) {
        this.id = stated.id;
        this.version = stated.version;
        this.title = stated.title;
        this.catalogue = stated.catalogue;
        this.individuals = ImmutableMap.copyOf(stated.individuals);
        this.litters = ImmutableMap.copyOf(stated.litters);
        this.corrections = ImmutableList.copyOf(stated.corrections);
        this.litterList = litters.values().asList();
        this.links = links;
        this.recordKinds = Suppliers.memoize(() -> RecordKinds.of(individuals.values()));
        ImmutableList<String> ids = individuals.keySet().asList();
        this.order = Arrays.stream(links.order()).mapToObj(ids::get).collect(ImmutableList.toImmutableList());
    }

    /**
     * Starts a pedigree.
     *
     * @param id its id, for example {@code example.kennel}
     * @param version its version
     * @return an empty builder
     */
    public static PedigreeBuilder builder(String id, String version) {
        return new PedigreeBuilder(id, version);
    }

    /**
     * Returns the id.
     *
     * @return the id
     */
    public String id() {
        return id;
    }

    /**
     * Returns the version.
     *
     * @return the version
     */
    public String version() {
        return version;
    }

    /**
     * Returns the title.
     *
     * @return the title, if one is stated
     */
    public Optional<String> title() {
        return title;
    }

    /**
     * Returns the catalogue whose traits the observations name.
     *
     * @return the reference, if one is stated
     */
    public Optional<Reference> catalogue() {
        return catalogue;
    }

    /**
     * Returns the full reference to this pedigree. It is computed anew at each call, in time proportional to all that is recorded.
     *
     * @return id, version and hash of the canonical form
     */
    public Reference reference() {
        return new Reference(id, version, Optional.of(Canonical.sha256(PedigreeDocument.of(this))));
    }

    /**
     * Returns the individuals.
     *
     * @return individuals by id in the order stated, unmodifiable
     */
    public Map<String, Individual> individuals() {
        return individuals;
    }

    /**
     * Returns the litters.
     *
     * @return litters by id in the order stated, unmodifiable
     */
    public Map<String, Litter> litters() {
        return litters;
    }

    /**
     * Returns the trail of corrections.
     *
     * @return corrections, the oldest first
     */
    public List<Correction> corrections() {
        return corrections;
    }

    /**
     * Returns an individual.
     *
     * @param individual an id
     * @return what is recorded of it
     * @throws IllegalArgumentException if none of this id is recorded
     */
    public Individual individual(String individual) {
        Individual found = individuals.get(individual);
        if (found == null) {
            throw new IllegalArgumentException(
                    "no individual \"" + individual + "\" is recorded in the pedigree " + this);
        }
        return found;
    }

    /**
     * Returns the litter that an individual comes from.
     *
     * @param individual id of an individual
     * @return its litter; empty for a founder
     * @throws IllegalArgumentException if none of this id is recorded
     */
    public Optional<Litter> litterOf(String individual) {
        int litter = links.litterOf[positionOf(individual)];
        return litter == Links.NONE ? Optional.empty() : Optional.of(litterList.get(litter));
    }

    /**
     * Returns the litters of which an individual is the dam, is the sire or may be the sire.
     *
     * @param individual id of an individual
     * @return litters in the order stated
     * @throws IllegalArgumentException if none of this id is recorded
     */
    public List<Litter> littersOf(String individual) {
        return Arrays.stream(links.littersOf(positionOf(individual)))
                .mapToObj(litterList::get)
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns the recorded kits of the litters of which an individual is the dam, is the sire or may be the sire.
     *
     * @param individual id of an individual
     * @return ids, litter by litter
     * @throws IllegalArgumentException if none of this id is recorded
     */
    public List<String> kitsOf(String individual) {
        return littersOf(individual).stream()
                .flatMap(litter -> litter.kits().stream())
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns the recorded individuals that are or may be a parent of an individual.
     *
     * @param individual id of an individual
     * @return the dam first, then the sire or the candidates; none for a founder
     * @throws IllegalArgumentException if none of this id is recorded
     */
    public List<String> parentsOf(String individual) {
        ImmutableList.Builder<String> parents = ImmutableList.builder();
        litterOf(individual).ifPresent(litter -> {
            litter.dam().ifPresent(parents::add);
            parents.addAll(litter.sires().males());
        });
        return parents.build();
    }

    /**
     * Returns the founders: individuals that come from no recorded litter.
     *
     * @return ids in the order stated
     */
    public List<String> founders() {
        return individuals.keySet().stream()
                .filter(one -> litterOf(one).isEmpty())
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns all individuals so that those who are or may be parents come before their young.
     *
     * @return ids; the same order whenever the records were stated in the same order
     */
    public List<String> order() {
        return order;
    }

    /**
     * Returns all possible ancestors of some individuals.
     *
     * @param of ids of individuals
     * @return ids of these and of everyone who is or may be an ancestor of one, parents before their young
     * @throws IllegalArgumentException if one is not recorded
     */
    public Set<String> withAncestors(String... of) {
        boolean[] reached = new boolean[individuals.size()];
        for (String one : of) {
            reached[positionOf(one)] = true;
        }
        List<String> found = new ArrayList<>();
        for (int i = order.size() - 1; i >= 0; i--) {
            int at = links.at(order.get(i));
            if (reached[at]) {
                found.add(order.get(i));
                for (int parent : links.parentsOf(at)) {
                    reached[parent] = true;
                }
            }
        }
        Set<String> set = new LinkedHashSet<>();
        for (int i = found.size() - 1; i >= 0; i--) {
            set.add(found.get(i));
        }
        return set;
    }

    /**
     * Returns when an individual was born: by its own record or by that of its litter.
     *
     * @param individual id of an individual
     * @return the date, if either is recorded
     * @throws IllegalArgumentException if none of this id is recorded
     */
    public Optional<LocalDate> bornOf(String individual) {
        return individual(individual).born().or(() -> litterOf(individual).flatMap(Litter::born));
    }

    /**
     * Returns who comes from whom, by positions.
     *
     * @return the links
     */
    public Links links() {
        return links;
    }

    /**
     * Returns the individual at a position.
     *
     * @param position from 0, as they were stated
     * @return what is recorded of it
     */
    public Individual individualAt(int position) {
        return individuals.values().asList().get(position);
    }

    /**
     * Returns the litter at a position.
     *
     * @param position from 0, as they were stated
     * @return what is recorded of it
     */
    public Litter litterAt(int position) {
        return litterList.get(position);
    }

    /**
     * Returns the position of an individual.
     *
     * @param individual id of an individual
     * @return its position, from 0, as they were stated
     * @throws IllegalArgumentException if none of this id is recorded
     */
    public int positionOf(String individual) {
        return links.at(individual(individual).id());
    }

    /**
     * Returns the individuals sorted by what was recorded of them.
     *
     * @return the kinds of records, by position
     */
    public RecordKinds recordKinds() {
        return Objects.requireNonNull(recordKinds.get());
    }

    /**
     * Compares what is recorded with a model.
     *
     * @param model a model
     * @return everything that the model does not know: another catalogue, a trait, a state, a season, a locus, an allele, a population, a
     *     genotype that no animal of that sex can have; none if all fits
     */
    public List<Problem> problemsUnder(Model model) {
        return new ModelChecks(this, model).problems();
    }

    /**
     * Returns the change that puts another record in the place of what is recorded of an individual, or adds one.
     *
     * @param after the record since then
     * @return the change, to be part of a {@link Correction}
     * @throws IllegalArgumentException if the record is what stands there already
     */
    public Change change(Individual after) {
        return new Change.OfIndividual(Optional.ofNullable(individuals.get(after.id())), Optional.of(after));
    }

    /**
     * Returns the change that puts another record in the place of what is recorded of a litter, or adds one.
     *
     * @param after the record since then
     * @return the change, to be part of a {@link Correction}
     * @throws IllegalArgumentException if the record is what stands there already
     */
    public Change change(Litter after) {
        return new Change.OfLitter(Optional.ofNullable(litters.get(after.id())), Optional.of(after));
    }

    /**
     * Returns this pedigree with a correction, which its trail keeps. Id and version stay as they are.
     *
     * @param correction what changes, when and why; what it says was there before must be what is recorded
     * @return the corrected pedigree
     * @throws ProblemsException if the corrected pedigree is not sound, or something else was recorded before
     */
    public Pedigree corrected(Correction correction) {
        for (Change change : correction.changes()) {
            Optional<?> found = change instanceof Change.OfIndividual
                    ? Optional.ofNullable(individuals.get(change.id()))
                    : Optional.ofNullable(litters.get(change.id()));
            if (!found.equals(Trail.before(change))) {
                throw new ProblemsException(Problem.of(
                                Stage.MEANING,
                                "other-record",
                                change.pointer(),
                                "the correction was made of another record than the one that stands here")
                        .expecting("the record that it says was there before"));
            }
        }
        PedigreeBuilder builder = empty();
        builder.individuals.putAll(individuals);
        builder.litters.putAll(litters);
        correction.changes().forEach(change -> Trail.apply(change, false, builder.individuals, builder.litters));
        corrections.forEach(builder::add);
        return builder.add(correction).build();
    }

    /**
     * Returns this pedigree as it was before the last correction.
     *
     * @return the pedigree with a shorter trail; this if nothing was corrected
     * @throws ProblemsException if the trail was stated by hand and what it leads back to is not sound
     */
    public Pedigree beforeLastCorrection() {
        return corrections.isEmpty() ? this : after(corrections.size() - 1);
    }

    /**
     * Returns this pedigree as it was before all corrections.
     *
     * @return a pedigree with an empty trail; this if nothing was corrected
     * @throws ProblemsException if the trail was stated by hand and what it leads back to is not sound
     */
    public Pedigree original() {
        return corrections.isEmpty() ? this : after(0);
    }

    /** The pedigree as it was after the first so many corrections. */
    private Pedigree after(int kept) {
        PedigreeBuilder builder = empty();
        builder.individuals.putAll(individuals);
        builder.litters.putAll(litters);
        for (int i = corrections.size() - 1; i >= kept; i--) {
            corrections
                    .get(i)
                    .changes()
                    .forEach(change -> Trail.apply(change, true, builder.individuals, builder.litters));
        }
        corrections.subList(0, kept).forEach(builder::add);
        return builder.build();
    }

    private PedigreeBuilder empty() {
        PedigreeBuilder builder = new PedigreeBuilder(id, version);
        builder.title = title;
        builder.catalogue = catalogue;
        return builder;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Pedigree that
                && id.equals(that.id)
                && version.equals(that.version)
                && title.equals(that.title)
                && catalogue.equals(that.catalogue)
                && individuals.equals(that.individuals)
                && litters.equals(that.litters)
                && corrections.equals(that.corrections);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, version, individuals.keySet(), litters.keySet());
    }

    /** Returns {@code id version}. */
    @Override
    public String toString() {
        return id + " " + version;
    }
}
