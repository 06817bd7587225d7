package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.Sires;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Viability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Tells which matings of an animal are not proposed, and what has to be said of those that are. */
final class Exclusions {

    /** The kinds of question whose cautions go with a test mating. */
    private static final List<String> KINDS = List.of("carriers", "mating", "plan");

    private final Answers answers;
    private final CompiledModel compiled;
    private final Animal animal;
    private final Sex sex;
    private final LifeStage stage;
    private final MatePool pool;
    private final Set<String> lifted;
    private final Set<String> raised = new LinkedHashSet<>();
    private final Set<GenotypeSet> known = new LinkedHashSet<>();

    Exclusions(Answers answers, Animal animal, Sex sex, LifeStage stage, MatePool pool, Set<String> lifted) {
        this.answers = answers;
        this.compiled = answers.compiled();
        this.animal = animal;
        this.sex = sex;
        this.stage = stage;
        this.pool = pool;
        this.lifted = lifted;
        requireKnown(answers, lifted);
        raise(Situation.of("").with(Role.PARENT, looks(animal.looks(), animal.genotypes())));
    }

    /** Refuses names that no exclusion has. */
    static void requireKnown(Answers answers, Collection<String> lifted) {
        List<String> names = new ArrayList<>();
        answers.cautions().stream().filter(Caution::excludes).map(Caution::id).forEach(names::add);
        names.add(TestResult.LOST_YOUNG);
        List<Problem> problems = lifted.stream()
                .filter(name -> !names.contains(name))
                .map(name -> Problems.unknown(
                        Stage.REFERENCES, "unknown-exclusion", "", "caution that excludes a mating", name, names))
                .toList();
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
    }

    /**
     * Why a mating is not proposed: what is stated raises a caution that excludes it, or what is tested for does. What is merely not
     * known raises cautions, which are kept for {@link #cautions()}, and excludes nothing: no animal is known whole.
     */
    List<TestResult.Exclusion> of(HiddenAllele allele, Animal carrier, TestMate mate) {
        return of(carrier, mate, allele.locus());
    }

    /** Why a mating with a mate that is known is not proposed, whatever it is made for. */
    List<TestResult.Exclusion> of(Animal mate, Relation relation) {
        return of(animal, TestMate.of("the mate", mate).related(relation), "");
    }

    private List<TestResult.Exclusion> of(Animal tested, TestMate mate, String locus) {
        GenotypeSet other = pool.genotypes(animal, mate);
        if (known.add(other)) {
            raiseAll(other);
        }
        raise(Situation.of("").with(mate.relation()));
        GenotypeSet plain = plainest(tested.genotypes(), locus);
        GenotypeSet plainMate = plainest(other, locus);
        List<TestResult.Exclusion> found = new ArrayList<>();
        add(found, "the animal", Situation.of("").with(Role.PARENT, looks(animal.looks(), plain)));
        add(found, "the mate", Situation.of("").with(Role.PARENT, looks(described(mate), plainMate)));
        add(found, "the young", Situation.of("").with(Role.OFFSPRING, kits(Parent.among(plain), plainMate)));
        add(found, "the relation", Situation.of("").with(mate.relation()));
        if (!lifted.contains(TestResult.LOST_YOUNG)) {
            lost(plain, plainMate).ifPresent(found::add);
        }
        return found;
    }

    /** All that the animal, mates and their young may show by what is known of them. */
    private void raiseAll(GenotypeSet mates) {
        raise(Situation.of("").with(Role.PARENT, looks(Phenotype.unspecified(), mates)));
        raise(Situation.of("").with(Role.OFFSPRING, kits(animal.parent(), mates)));
    }

    /**
     * Of what an animal may carry, what differs least from the wild type, and where it cannot carry that, what hides nothing else; at the locus
     * of the test last.
     */
    private GenotypeSet plainest(GenotypeSet known, String tested) {
        GenotypeSet left = known;
        List<Locus> loci = new ArrayList<>(answers.model().loci().values());
        loci.sort(Comparator.comparing(locus -> locus.id().equals(tested)));
        for (Locus locus : loci) {
            List<AllelePair> pairs = left.pairs(locus.id());
            String plain = MatePool.plain(locus);
            int most = pairs.stream().mapToInt(pair -> doses(pair, plain)).max().orElse(0);
            List<AllelePair> plainest =
                    pairs.stream().filter(pair -> doses(pair, plain) == most).toList();
            List<AllelePair> hiding =
                    plainest.stream().filter(AllelePair::isHeterozygous).toList();
            GenotypeSet fewer = left.where(
                    locus.id(),
                    hiding.size() == plainest.size()
                            ? plainest
                            : plainest.stream()
                                    .filter(pair -> !hiding.contains(pair))
                                    .toList());
            left = fewer.isEmpty() ? left : fewer;
        }
        return left;
    }

    private static int doses(AllelePair pair, String allele) {
        return (int)
                pair.alleles().stream().filter(one -> one.id().equals(allele)).count();
    }

    private static Phenotype described(TestMate mate) {
        if (mate.kind() == TestMate.Kind.KNOWN) {
            return mate.animals().get(0).looks();
        }
        return mate.seen().isEmpty()
                ? Phenotype.unspecified()
                : mate.seen().get(mate.seen().size() - 1).look();
    }

    private List<Phenotype> looks(Phenotype described, GenotypeSet genotypes) {
        return answers.cautionLooks(
                described, named -> PossibleLooks.of(compiled, genotypes, named, LifeStage.unstated()));
    }

    private List<Phenotype> kits(Parent tested, GenotypeSet mates) {
        Parent mate = Parent.among(mates);
        UncertainCross cross = sex == Sex.MALE
                ? UncertainCross.of(compiled, Sires.of(tested), mate)
                : UncertainCross.of(compiled, Sires.of(mate), tested);
        return cross.isContradictory()
                ? List.of()
                : answers.cautionLooks(
                        Phenotype.unspecified(),
                        named -> PossibleLooks.atAnyStage(
                                answers.model(), stage, when -> cross.possible(new View(named, when, Census.BORN))));
    }

    private void add(List<TestResult.Exclusion> found, String about, Situation situation) {
        raise(situation).stream()
                .filter(Caution::excludes)
                .filter(caution -> !lifted.contains(caution.id()))
                .filter(caution -> found.stream().noneMatch(one -> one.name().equals(caution.id())))
                .forEach(caution -> found.add(new TestResult.Exclusion(caution.id(), caution.line(), about)));
    }

    private List<Caution> raise(Situation situation) {
        Set<Caution> due = new LinkedHashSet<>();
        for (String kind : KINDS) {
            due.addAll(answers.cautions(new Situation(kind, situation.looks(), situation.relation())));
        }
        due.forEach(caution -> raised.add(caution.id()));
        return new ArrayList<>(due);
    }

    /** The young that the model itself says are lost. */
    private Optional<TestResult.Exclusion> lost(GenotypeSet carrier, GenotypeSet other) {
        for (Viability one : answers.model().viability().values()) {
            Locus locus = answers.model().locus(one.locus());
            Map<String, List<AllelePair>> young = pool.young(carrier, other, ImmutableSet.of(one.locus()));
            boolean may = (!one.birth().isOne() || !one.scored().isOne())
                    && young.values().stream()
                            .flatMap(List::stream)
                            .anyMatch(pair -> locus.expressions(pair).stream().anyMatch(one.expressions()::contains));
            if (may) {
                return Optional.of(new TestResult.Exclusion(
                        TestResult.LOST_YOUNG,
                        "By \"" + one.id() + "\" of the model some "
                                + answers.young().many() + " may be lost before they are scored.",
                        "the young"));
            }
        }
        return Optional.empty();
    }

    /** All that was raised, in declared order. */
    List<Caution> cautions() {
        return answers.cautions().stream()
                .filter(caution -> raised.contains(caution.id()))
                .toList();
    }
}
