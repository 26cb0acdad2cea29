"""What beds are made of and held together with: tables of the trade, each figure with its source.

The tables lie in `resources/` as CSV and are read when first asked for. A loader in the plural
gives all rows by key (`slides()`), the singular one row (`slide("side_mount_full")`).
"""

from model.materials.allowable import Allowed, Step, allowed
from model.materials.connector import BoltDrive, Connector, bolt_drives, connector, connectors
from model.materials.glide import Glide, glide, glides
from model.materials.load import PublishedLoad, published_load, published_loads
from model.materials.lumber import LumberSize, lumber, lumber_size, rough_stock
from model.materials.material import Material, material, materials
from model.materials.mattress import Mattress, mattress, mattresses
from model.materials.own import OwnRows
from model.materials.pull import Pull, pull, pulls
from model.materials.screw import (
    PocketScrew,
    PullScrew,
    WoodScrew,
    pocket_screw,
    pocket_screw_for,
    pocket_screws,
    pull_screw_for,
    pull_screws,
    screw_no_longer_than,
    screws,
    wood_screw,
)
from model.materials.sheet import Sheet, sheet, sheets
from model.materials.slide import Slide, slide, slides
from model.materials.species import Species, species, wood
from model.materials.stock_grade import StockGrade, stock_grade, stock_grades
from model.materials.table import rows_of

__all__ = [
    "Allowed",
    "BoltDrive",
    "Connector",
    "Glide",
    "LumberSize",
    "Material",
    "Mattress",
    "OwnRows",
    "PocketScrew",
    "Pull",
    "PublishedLoad",
    "PullScrew",
    "Sheet",
    "Slide",
    "Species",
    "Step",
    "StockGrade",
    "WoodScrew",
    "allowed",
    "bolt_drives",
    "connector",
    "connectors",
    "glide",
    "glides",
    "lumber",
    "lumber_size",
    "material",
    "materials",
    "mattress",
    "mattresses",
    "pocket_screw",
    "pocket_screw_for",
    "pocket_screws",
    "pull",
    "pull_screw_for",
    "published_load",
    "published_loads",
    "pull_screws",
    "pulls",
    "rough_stock",
    "rows_of",
    "screw_no_longer_than",
    "screws",
    "sheet",
    "sheets",
    "slide",
    "slides",
    "species",
    "stock_grade",
    "stock_grades",
    "wood",
    "wood_screw",
]
