"""The words that keys are made of: ours, short, and no two of them one letter apart."""

from __future__ import annotations

_TEXT = """
acorn acre actor adobe agate agent album alder algae almond alpine amber amble anchor angle antelope
anvil apple apricot apron arbour arcade arena argue aroma artichoke artist ash aspen aster atlas
attic aubergine august aunt autumn avenue awning axis axle azure badger bagel bagpipe bakery balcony
ballad balloon bamboo banana bandage banjo banner barge bark barley barnacle barrel basil basket
bath bathtub beacon beak beaver bee beetle bell bench berry bike birch bird birthday biscuit bison
blackbird blade blanket blizzard blossom blue bluebell blush boat bobbin bonfire bonnet bookcase
border bottle boulder bowl bracelet braid bramble branch brass bread breeze brew brick bridle
brioche broccoli bronze brook broth brown bubble bucket buckle budget buffalo bugle bulb bun bunny
butter buttercup butterfly button buzzard cabbage cabin cable cactus cake calendar camel camera camp
canal candle canoe canopy canvas canyon caramel caravan card cardigan cargo carnival carol carpet
carrot cartoon castle cat caterpillar cauldron cavern cedar celery cello cement census cereal chair
chalk champion channel chapel chapter charcoal chart cheese cherry chess chestnut chicken chimney
chimpanzee chive cinder cinema cinnamon circus citrus city clam clarinet clerk cliff cloak clockwork
cloister cloth cloud clover coach coal coast cobalt cobble cobweb cocoa coconut cod coffee coin
collar comet comic compass concert condor copper cork cormorant cottage cotton cough council cousin
crab cradle cranberry crane crater crayon cream creek cricket crisp crocodile crocus crow crumb
crust crystal cuckoo cucumber cup cupboard currant curry curtain custard cymbal cypress daffodil
dahlia dairy damson dance dandelion dawn daylight debate decade deck deer delta denim dentist desert
diamond dice dinner dinosaur dish diver doctor doll dolphin domino donkey door dormouse dove dragon
dragonfly drawer dress drift driftwood drizzle drum dune dusk duvet eagle earring earth echo eclipse
elbow elephant emerald engine envelope equator ermine essay estate evening event extra fabric
factory falcon family farm faucet feast feather felt fence fennel fern festival fiddle field figure
film finch fire firefly fireplace flag flame flamingo flannel flask fleece flint floor flower flute
foam folder forest fossil fountain foxglove freight friend fringe frog frost fruit fudge galaxy
gallery garden gardener garlic garnet gazelle gecko geyser giant ginger giraffe glacier glass globe
goblet goggle gold goldfish gondola goose gorge gourd grain granite grape gravel gravy green grocer
grove guardian guest guide guitar gull gymnast haddock hail hallway hamlet hammer hammock hamster
hand harp harvest hawk hazel hazelnut headland hedge hedgehog helmet herb hermit heron herring
highland hill hinge hippo history hobby holly honey honeycomb hood horizon hornet horse hotel hour
humble hurdle husky hyacinth iceberg icicle igloo indigo inlet insect invite iris iron island ivory
jacket jade jaguar january jasmine jelly jewel jigsaw jockey journal journey juggle juice july
jumper juniper kale kangaroo kayak kebab kelp kernel kettle kiln kiosk kitchen kite kitten kiwi knee
knot koala label lace ladder ladle ladybird lagoon lakeside lamb landscape lantern larch laser lasso
laundry laurel lava lavender leaf lecture leek legend lemon lentil leopard letter lettuce level
library lichen lifeboat lilac lily lime limestone linen lion lizard llama lobster locket lodge loft
logic lotus lucky lumber lunar lunch lupin lyric macaroni magnet magpie mallard mandarin mango manor
maple marble margin marigold market marmalade marrow marsh mask mason meadow medal melody memory
mentor menu merchant mermaid meteor metro midday midnight milk milkshake minnow mint minute mirror
mixer model mole moment monday mongoose month moon moonlight morning mosaic moss motor mound mouse
muffin mulberry museum mushroom music myrtle napkin narwhal navy nectar needle nephew nest nickel
nightfall noble noodle north nose notebook novel november nurse nutmeg nutshell nylon oasis obelisk
ocean ochre october octopus office olive omelette onion onyx opal opera orange orbit orchard
orchestra orchid organ ornament osprey ostrich otter oven overcoat oxygen oyster paddle page paint
palace palette palm pancake panda pansy panther pantry papaya paper paprika parade parcel parsley
parsnip party pasta patch patio pavilion peach peacock peanut pearl pebble pecan pelican pencil
penguin pepper petal pheasant phone piano pickle picnic pigeon pilgrim pillow pilot pinecone pink
pistachio pizza plaid planet plank plaster plate platinum platypus plaza plume poem pollen pond
poplar poppy porcelain porcupine porridge port postcard postman potato pottery powder prairie prawn
pretzel primrose prism prize pudding pumpkin pupil puppet purple puzzle pyramid python quail quarry
quarter quartz quiche quill quince quiver quiz rabbit raccoon radio radish raft rainbow raisin rapid
raspberry raven ravine recipe record redwood reef regatta reindeer relish rhubarb ribbon ridge
riverbank road robin rodeo roof rope rosebud rosemary rowboat ruby rudder ruler rustic sack saffron
salad salmon salt sandal sandpiper sapphire sardine satchel satin saturn saucer savoury scallop
scarecrow scarf school science scissors scone scooter scout sculptor seagull seal seashell season
seaweed seed sesame shadow shallot shamrock shark shawl sheep shell sherbet shield ship shirt shore
shovel shower shrimp shrub silver sister skate sketch sledge sleeve slipper smoke snail snow
snowdrop soap soccer sofa soldier south spade spaniel sparrow spearmint spice spider spinach spiral
sponge spoon spring sprout spruce squash squid squirrel stable stadium stamp star starfish starling
station statue steel stem stilt stool stork stove strap stream street stripe studio sugar suitcase
summer summit sunday sundial sunflower sunset supper surf swallow swan sweater swift swim swordfish
sycamore syrup tadpole tailor talent tangerine tank tapestry tarmac tart tartan tassel taxi teacher
teacup teapot teaspoon telescope temple tennis tent terrace terrier thatch theatre thermos thimble
thistle thorn thread throne thrush thumb thunder thursday thyme ticket tiger tile timber tiptoe
toadstool token tomato tongs topaz torch tornado tortilla tortoise toucan towel town tractor trail
tram treasure tree treetop tricycle trophy trout truffle trumpet trunk tuba tuesday tulip tundra
tunic tunnel turban turbine turkey turnip turquoise turtle tutor tweed twig twilight twinkle ukulele
umbrella uncle unicorn uniform upland urchin usher vacuum valley valve vanilla vase vault velvet
vendor veranda vermilion verse vessel viaduct video village vine vinegar vineyard viola violet
violin visitor voice volcano volume voyage vulture wafer waffle wagon waiter wallaby wallet walnut
walrus waltz wardrobe wasp waterfall wave weasel wedding wednesday weekend whale wharf wheat wheel
whisker wind windmill winter wisdom wolf wombat wonder woodland wool world wren wrist xylophone
yacht yarn year yellow yoga yoghurt young zebra zenith zero zigzag zinc zodiac zone
"""

KEY_WORDS = tuple(_TEXT.split())
"""As many as there are numbers of ten bits, in order."""
