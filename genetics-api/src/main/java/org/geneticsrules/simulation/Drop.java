package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.expression.Census;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Links;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Drops genes through a pedigree: founders are drawn, then each litter from its parents, who come before it. If parents can have no kit, that
 * founders were such is excluded by the kit, and all is drawn again.
 */
final class Drop {

    private final Drawing drawing;
    private final Descent descent;
    private final Randomness randomness;
    private final long most;
    private final List<Optional<Sex>> sexes = new ArrayList<>();

    Drop(Drawing drawing, Descent descent, Randomness randomness, long most) {
        this.drawing = drawing;
        this.descent = descent;
        this.randomness = randomness;
        this.most = most;
        descent.pedigree().individuals().values().forEach(one -> sexes.add(descent.sex(one)));
    }

    /** Draws a pedigree; empty if a litter of it is not heard of. */
    Optional<DrawnPedigree> draw() {
        for (long tries = 0; tries < most; tries++) {
            World world = new World();
            if (world.play()) {
                return world.write();
            }
        }
        throw new TooRareException(
                "in pedigree " + descent.pedigree()
                        + " some parents could have none of the kits that they are recorded with,"
                        + " so that none came up",
                most,
                "look for a litter whose parents, by what is stated of the founders, lose all young of a sex.");
    }

    /** What was recorded of an animal of which nothing was known but who it is. */
    static Individual recorded(Individual bare, DrawnAnimal drawn) {
        return new Individual(
                bare.id(),
                bare.sex().or(drawn::recordedSex),
                bare.born(),
                bare.population(),
                drawn.observations(),
                List.of(),
                drawn.tests(),
                List.of(),
                bare.fertility());
    }

    /** The parents of a litter, and its kits so far. */
    @SuppressWarnings("ArrayRecordComponent") // handed over, never compared
    private record Nest(short[] dam, List<short[]> males, int sire, Conception conception, Descent.Brood brood) {}

    private final class World {

        private final Pedigree plan = descent.pedigree();
        private final Links links = plan.links();

        /** By position, who has been drawn so far; a founder is its own sire. */
        private final Conception.@Nullable Kit[] drawn = new Conception.Kit[links.count()];

        /** By position, founders who had to live already, since it is known what they look like. */
        private final @Nullable DrawnAnimal[] lived = new DrawnAnimal[links.count()];

        private final @Nullable Nest[] nests = new Nest[plan.litters().size()];

        /** Draws what everybody carries; false if some parents can have no kit. */
        boolean play() {
            for (int i = 0; i < links.count(); i++) {
                int at = links.inOrder(i);
                int litter = links.litterOf(at);
                if (litter == Links.NONE) {
                    FounderDraw founder = descent.founder(at);
                    drawn[at] = founder.isSeen() ? live(at, founder) : bare(at, founder);
                } else if (!kit(at, nest(litter))) {
                    return false;
                }
            }
            return true;
        }

        private Sex sex(int at, FounderDraw founder) {
            return sexes.get(at).orElseGet(() -> founder.sex(drawing.chance));
        }

        private Conception.Kit bare(int at, FounderDraw founder) {
            Sex sex = sex(at, founder);
            short[] strands = founder.draw(sex, drawing.chance);
            return new Conception.Kit(sex, strands, strands);
        }

        private Conception.Kit live(int at, FounderDraw founder) {
            DrawnAnimal animal =
                    drawing.founder(Optional.of(plan.individualAt(at).id()), () -> sex(at, founder), founder);
            lived[at] = animal;
            return new Conception.Kit(animal.sex(), animal.strands(), animal.strands());
        }

        private Nest nest(int litter) {
            Nest found = nests[litter];
            if (found == null) {
                Descent.Brood brood = descent.brood(litter);
                List<short[]> males = new ArrayList<>();
                brood.sires().forEach(source -> males.add(parent(source, Sex.MALE)));
                int sire = brood.perKit() || males.size() == 1 ? 0 : drawing.chance.among(Chance.sums(brood.shares()));
                found = new Nest(parent(brood.dam(), Sex.FEMALE), males, sire, drawing.conception(), brood);
                nests[litter] = found;
            }
            return found;
        }

        private short[] parent(Descent.Source source, Sex role) {
            return source.unrecorded().isPresent()
                    ? source.unrecorded().get().draw(role, drawing.chance)
                    : at(source.individual()).strands();
        }

        private boolean kit(int at, Nest nest) {
            Optional<Conception.Kit> kit = kit(nest, nest.conception(), sexes.get(at));
            kit.ifPresent(one -> drawn[at] = one);
            return kit.isPresent();
        }

        /** A kit that the parents of a litter had before it. */
        private Optional<DrawnAnimal> earlier(Nest nest) {
            return kit(nest, drawing.conception(), Optional.empty())
                    .map(kit -> drawing.live(Optional.empty(), kit.sex(), kit.strands()));
        }

        private Optional<Conception.Kit> kit(Nest nest, Conception conception, Optional<Sex> sex) {
            double[] shares = nest.brood().shares().clone();
            int sire = nest.sire();
            while (true) {
                if (nest.brood().perKit()) {
                    sire = drawing.chance.among(Chance.sums(shares));
                }
                short[] male = nest.males().get(sire);
                if (conception.until(Census.SCORED, male, nest.dam(), sex)) {
                    List<Conception.Kit> kits = conception.scored();
                    return Optional.of(kits.get(kits.size() - 1));
                }
                // A kit has one of the males who can have kits with its dam.
                shares[sire] = 0;
                if (!nest.brood().perKit()
                        || conception.canHaveKits(male, nest.dam())
                        || Arrays.stream(shares).sum() == 0) {
                    return Optional.empty();
                }
            }
        }

        /** Lets everybody live, and writes down what is seen; empty if a litter is not heard of. */
        Optional<DrawnPedigree> write() {
            PedigreeBuilder builder = Pedigree.builder(plan.id(), plan.version() + " drawn")
                    .catalogue(drawing.genome.model().catalogue().reference());
            plan.title().ifPresent(builder::title);
            Map<String, DrawnAnimal> animals = new LinkedHashMap<>();
            List<DrawnAnimal> all = new ArrayList<>();
            for (int at = 0; at < links.count(); at++) {
                Individual one = plan.individualAt(at);
                DrawnAnimal before = lived[at];
                DrawnAnimal animal = before != null
                        ? before
                        : drawing.live(
                                Optional.of(one.id()),
                                at(at).sex(),
                                at(at).strands(),
                                links.litterOf(at) == Links.NONE);
                animals.put(one.id(), animal);
                all.add(animal);
                builder.add(recorded(one, animal));
            }
            Map<String, DrawnLitter> litters = new LinkedHashMap<>();
            for (int number = 0; number < nests.length; number++) {
                Litter litter = plan.litterAt(number);
                List<DrawnAnimal> kits = litter.kits().stream()
                        .map(kit -> all.get(plan.positionOf(kit)))
                        .toList();
                Nest nest = nest(number);
                Optional<Selection.Known> known = drawing.selection.known(kits, () -> earlier(nest), drawing.chance);
                if (known.isEmpty()) {
                    return Optional.empty();
                }
                DrawnLitter drawnLitter = litter(litter, nest, all, kits, known.get());
                builder.add(litter.with(drawnLitter.ascertainment()));
                litters.put(litter.id(), drawnLitter);
            }
            return Optional.of(new DrawnPedigree(builder.build(), animals, litters, 1, randomness));
        }

        private Conception.Kit at(int individual) {
            return Objects.requireNonNull(drawn[individual]);
        }

        private DrawnLitter litter(
                Litter litter, Nest nest, List<DrawnAnimal> all, List<DrawnAnimal> kits, Selection.Known known) {
            DrawnAnimal dam = parent(nest.brood().dam(), Sex.FEMALE, nest.dam(), all);
            List<DrawnAnimal> males = new ArrayList<>();
            for (int i = 0; i < nest.males().size(); i++) {
                males.add(parent(
                        nest.brood().sires().get(i), Sex.MALE, nest.males().get(i), all));
            }
            List<DrawnAnimal> ofKits = new ArrayList<>();
            for (String kit : litter.kits()) {
                int at = plan.positionOf(kit);
                for (int i = 0; i < males.size(); i++) {
                    if (at(at).sire() == nest.males().get(i)) {
                        ofKits.add(males.get(i));
                        break;
                    }
                }
            }
            return new DrawnLitter(
                    dam,
                    nest.brood().perKit() ? ofKits : List.of(males.get(nest.sire())),
                    kits,
                    nest.conception().conceived(),
                    nest.conception().born(),
                    known.probands(),
                    known.earlier(),
                    drawing.selection.stated(known.probands()),
                    1);
        }

        private DrawnAnimal parent(Descent.Source source, Sex role, short[] carries, List<DrawnAnimal> all) {
            return source.individual() == Links.NONE
                    ? drawing.live(Optional.empty(), role, carries, true)
                    : all.get(source.individual());
        }
    }
}
